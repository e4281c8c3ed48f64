import type { Content, TableCell } from 'pdfmake/interfaces';
import type { Svg } from '../draw/svg.ts';
import { blackAndWhite, flatTones } from './grey.ts';
import { PDF_FONT } from './pdf.ts';

/** Pieces the papers are set from. */

export function drawing(svg: Svg, width: number): Content {
  return { svg: flatTones(blackAndWhite(svg, PDF_FONT)), width };
}

/** A drawing in a hairline frame with its caption. */
export function framed(svg: Svg, width: number, caption: string): Content {
  return {
    stack: [
      {
        table: { widths: [width - 1], body: [[drawing(svg, width - 1)]] },
        layout: {
          hLineWidth: () => 0.5,
          vLineWidth: () => 0.5,
          paddingLeft: () => 0,
          paddingRight: () => 0,
          paddingTop: () => 0,
          paddingBottom: () => 0,
        },
      },
      { text: caption, fontSize: 6.8, margin: [0, 2, 0, 0] },
    ],
    unbreakable: true,
  };
}

export function titled(title: string, items: readonly string[]): Content[] {
  if (items.length === 0) return [];
  return [
    { text: title, bold: true, margin: [0, 5, 0, 1] },
    { ul: items.map((text) => ({ text, margin: [0, 0, 0, 1] })), markerColor: '#000000' },
  ];
}

/** Heading, right: a word in a frame, its border heavier outside, dashed without a verdict. */
export function heading(title: string, stamp: { word: string; small: string | null } | null, below: string): Content[] {
  const word: Content =
    stamp === null
      ? { text: '' }
      : {
          text: [
            { text: stamp.word, bold: true, fontSize: 12 },
            ...(stamp.small === null ? [] : [{ text: `  ${stamp.small}`, fontSize: 7 }]),
          ],
          noWrap: true,
        };
  const heavy = stamp?.word === 'outside' ? 2.6 : 1.3;
  return [
    {
      columns: [
        { text: title, bold: true, fontSize: 15, width: '*' },
        ...(stamp === null
          ? []
          : [
              {
                width: 'auto' as const,
                table: { body: [[word]] },
                layout: {
                  hLineWidth: () => heavy,
                  vLineWidth: () => heavy,
                  hLineStyle: () => (stamp.word === 'no verdict' ? { dash: { length: 3 } } : null),
                  vLineStyle: () => (stamp.word === 'no verdict' ? { dash: { length: 3 } } : null),
                  paddingLeft: () => 7,
                  paddingRight: () => 7,
                  paddingTop: () => 1,
                  paddingBottom: () => 2,
                },
              },
            ]),
      ],
      columnGap: 12,
    },
    { text: below, margin: [0, 4, 0, 6] },
  ];
}

/**
 * A table to be filled in with a pen: every cell from one column on is framed.
 * @param penFrom the first column for the pen
 * @param height of a row, points
 */
export function penTable(
  widths: (number | string)[],
  head: readonly string[],
  rows: TableCell[][],
  { penFrom, height }: { penFrom: number; height: number },
): Content {
  const heading = head.map((text): TableCell => ({ text, bold: true, fontSize: 7.2 }));
  return {
    table: {
      dontBreakRows: true,
      widths,
      heights: (row) => (row === 0 && head.length > 0 ? 10 : height),
      body: head.length === 0 ? rows : [heading, ...rows],
    },
    layout: {
      hLineWidth: (i) => (i === 0 ? (head.length === 0 ? 0.5 : 0) : i === 1 && head.length > 0 ? 0.9 : 0.5),
      vLineWidth: (i) => (i >= penFrom ? 0.5 : 0),
      paddingLeft: (i) => (i === 0 && penFrom > 0 ? 0 : 4),
      paddingRight: () => 3,
      paddingTop: () => 1.6,
      paddingBottom: () => 1.6,
    },
  };
}

/** What, and what it is, a line each; a value left empty is for a pen. */
export function pairsTable(rows: readonly (readonly [string, string])[], fontSize = 8): Content {
  const body = rows.map(([what, value]): TableCell[] => [
    { text: what, fontSize },
    { text: value === '' ? ' ' : value, bold: true, fontSize, preserveLeadingSpaces: true },
  ]);
  return {
    table: { widths: ['auto', '*'], body },
    layout: {
      hLineWidth: (i) => (i === 0 ? 0 : 0.3),
      hLineColor: () => '#888888',
      vLineWidth: () => 0,
      paddingLeft: (i) => (i === 0 ? 0 : 10),
      paddingRight: () => 3,
      paddingTop: () => 1.6,
      paddingBottom: () => 1.6,
    },
  };
}

/** A table with a rule under its head and hairlines between rows. */
export function ruled(
  widths: (number | string)[],
  head: readonly string[],
  rows: TableCell[][],
  penColumn = -1,
): Content {
  const columns = widths.length;
  return {
    table: {
      headerRows: 1,
      dontBreakRows: true,
      widths,
      body: [head.map((text) => ({ text, bold: true, fontSize: 7.2 })), ...rows],
    },
    layout: {
      hLineWidth: (i) => (i === 0 ? 0 : i === 1 ? 0.9 : 0.3),
      hLineColor: (i) => (i === 1 ? '#000000' : '#888888'),
      vLineWidth: (i) => (penColumn >= 0 && (i === penColumn || i === columns) ? 0.5 : 0),
      paddingLeft: (i) => (i === 0 ? 0 : 4),
      paddingRight: () => 3,
      paddingTop: () => 1.6,
      paddingBottom: () => 1.6,
    },
  };
}

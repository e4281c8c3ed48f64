/**
 * Texts that are said in English where they are found out (refusals, why an attempt is not counted, notes under a class) have their German: every one in
 * the source is looked up, read off the source itself, so that a new one cannot be forgotten.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { InputError, loadLanguage, profiles, readRecording, readRoster, wordsIn } from '../../scoring/index.ts';
import { phraseBook } from '../../scoring/words/phrase-book.ts';

await loadLanguage('de');
const { phrase, refusal, ready } = wordsIn('de');
const ROOMS = ['scoring', 'engine/input', 'game/core'];
/** The command line and the builds keep to English. */
const NOT_ON_SCREEN = /^scoring\/(node|tools)$/;
/** Nor does what the lab says where it is started. */
const AT_ITS_START =
  /^scoring\/lab\/(main|settings|serve|backup|rebuild|folder-lock|disk|demo|attempt-files|run-\w+)\.ts$/;
const NAMED = new Set(['found', 'allowed', 'message']);
/** Besides them, what the lab says of an attempt and of what was done. */
const NAMED_IN_LAB = new Set(['text', 'why', 'did', 'fault']);
const REFUSERS = new Set(['refusal', 'refused', 'refuse', 'png', 'jpeg', 'fault']);
/** The same in both languages, and some that are put together of words from elsewhere (looked at below). */
const SAME = /^[\d.]+ (MB|mm)$|^every macro read 7 by|^"toehold-7"|^found 7, allowed: 7$/;

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return NOT_ON_SCREEN.test(path) ? [] : sources(path);
    return /\.ts$/.test(entry.name) && !AT_ITS_START.test(path) ? [path] : [];
  });
}

/** The texts an expression may come to, every part that varies a 7; nothing for what is worked out elsewhere. */
function texts(e: ts.Expression): string[] {
  if (ts.isStringLiteralLike(e)) return [e.text];
  if (ts.isTemplateExpression(e))
    return e.templateSpans.reduce(
      (before, { expression, literal }) => {
        const parts = ts.isConditionalExpression(expression) ? texts(expression) : ['7'];
        return before.flatMap((text) => parts.map((part) => text + part + literal.text));
      },
      [e.head.text],
    );
  if (ts.isConditionalExpression(e)) return [...texts(e.whenTrue), ...texts(e.whenFalse)];
  if (ts.isParenthesizedExpression(e)) return texts(e.expression);
  if (ts.isBinaryExpression(e)) return [...texts(e.left), ...texts(e.right)];
  // `low to high °`.replace(…)
  if (ts.isCallExpression(e) && ts.isPropertyAccessExpression(e.expression) && e.expression.name.text === 'replace')
    return texts(e.expression.expression);
  return [];
}

function saidIn(file: string): string[] {
  const tree = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const inLab = file.startsWith('scoring/lab/');
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAssignment(node) && ts.isIdentifier(node.name)) {
      const { text } = node.name;
      if (NAMED.has(text) || (inLab && NAMED_IN_LAB.has(text))) found.push(...texts(node.initializer));
    }
    if (ts.isNewExpression(node) && node.expression.getText(tree) === 'Refusal')
      found.push(...(node.arguments?.slice(2) ?? []).flatMap(texts));
    if (ts.isCallExpression(node)) {
      const { expression: called, arguments: given } = node;
      if (ts.isIdentifier(called) && REFUSERS.has(called.text)) found.push(...given.slice(-2).flatMap(texts));
      if (ts.isPropertyAccessExpression(called)) {
        const on = called.expression.getText(tree).split('.').pop()!;
        if (called.name.text === 'push' && ['notCounted', 'mismatches', 'notes'].includes(on))
          found.push(...given.flatMap(texts));
        if (called.name.text === 'refine') found.push(...given.slice(1).flatMap(texts));
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

describe('texts said in English where they are found out', () => {
  const all = [...new Set(ROOMS.flatMap(sources).flatMap(saidIn))].filter((text) => /\p{L}{2}/u.test(text));

  it('are found in the source', () => expect(all.length).toBeGreaterThan(100));

  it('have their German', () => {
    expect(all.filter((text) => phrase(text) === text && !SAME.test(text))).toEqual([]);
  });

  it('and so have titles, editions and clauses of the profiles, but for those that are a number or a name', () => {
    const said = profiles.flatMap((p) => [p.title, ...p.rules.map((r) => r.clause)]);
    expect(said.filter((text) => ready(text) === text)).toEqual([]);
    expect(ready('asked: at most 7.5 mm leg')).toBe('gefordert: Schenkel höchstens 7,5 mm');
    expect(ready('asked: edge melted back at most 1 mm')).toBe('gefordert: Kante höchstens 1 mm abgeschmolzen');
    expect(ready('ISO 5817-B 506: overlap, counted from 0.2 mm')).toBe(
      'ISO 5817-B 506: Schweißgutüberlauf, gezählt ab 0,2 mm',
    );
  });
});

describe('a refusal in German', () => {
  const inGerman = (read: () => unknown): string => {
    try {
      read();
    } catch (error) {
      if (error instanceof InputError) return refusal(error.message);
      throw error;
    }
    return 'not refused';
  };

  it.each([
    [() => readRecording('', 'mia.json'), 'mia.json: gefunden: eine leere Datei; zulässig: JSON-Text'],
    [
      () => readRecording('{"a": 1', 'mia.json'),
      'mia.json: gefunden: Text, der kein JSON ist (die Datei ist abgeschnitten); zulässig: vollständiger JSON-Text',
    ],
    [
      () => readRecording('{"format": "toehold-exercise", "version": 2}', 'mia.json'),
      'mia.json: format: gefunden: "toehold-exercise", eine Übung; zulässig: "toehold-recording", die Aufzeichnung eines Versuchs; mit dieser Datei geht: Versuche danach bewerten (--exercise) oder auf der Werkbank öffnen',
    ],
    [
      () => readRecording('{"format": "toehold-recording", "version": 9}', 'x.json'),
      'x.json: version: gefunden: 9; zulässig: 1, 2; diese Datei hat eine neuere Version geschrieben als diese und lässt sich nicht lesen',
    ],
    [
      () => readRoster('name;bench\nMia;1\nmia;2\n', 'list.csv'),
      'list.csv: Zeile 3: gefunden: "mia", wie in Zeile 2; zulässig: unterscheidbare Namen; einen Buchstaben oder eine Nummer anfügen',
    ],
  ])('%#', (read, said) => expect(inGerman(read)).toBe(said));

  it('leaves every name of a file and of a person as it is', () => {
    expect(phrase("welded on plate 3, which is beat's; the roster gives plate 4")).toBe(
      'auf Blech 3 geschweißt, das beat gehört; in der Namensliste steht Blech 4',
    );
    expect(refusal('beat.json: found 0.5, allowed: at least 1.5')).toBe(
      'beat.json: gefunden: 0,5; zulässig: mindestens 1,5',
    );
    expect(phrase('every macro read 3 times by everybody')).toBe('jeder Makroschliff von jedem 3-mal gelesen');
    expect(refusal('something else entirely')).toBe('something else entirely');
  });
});

describe('a book of phrases', () => {
  it('takes the phrase that says most, says its parts by the same book, and leaves what it does not know', () => {
    const say = phraseBook(
      { '{1}, {2}': '{2}; {1}', 'at least {#1}': 'mindestens {1}', 'named {=1}, at least {#2}': '{2} bei {1}' },
      ',',
    );
    expect(say('at least 1.5, x')).toBe('x; mindestens 1,5');
    expect(say('named at least 2, at least 3')).toBe('3 bei at least 2');
    expect(say('at least three')).toBe('at least three');
  });
});

/** A root that is not there, not sure or not judged was shown as tied in; each as it was seen. Sections made up, nothing welded. */
import { describe, expect, it } from 'vitest';
import { words } from '../../game/locale/index.ts';
import { stripSvg } from '../../scoring/draw/strip-svg.ts';
import { weldedDown, wholePercent } from '../../scoring/index.ts';
import { readBead } from '../../scoring/measures/bead/summary.ts';
import { openedRoot, Survey } from '../../scoring/measures/bead/survey.ts';
import { readSection } from '../../scoring/measures/section/station.ts';
import { tiedInSaid } from '../../scoring/words/root.ts';
import { lineOfHeat, makeSection, segmentFace, teeJoint } from '../scoring/measures/sections.ts';

const tied = makeSection({ face: segmentFace(6, 1), peak: lineOfHeat(2, 2, 4.5) });
const cold = makeSection({ face: segmentFace(6, 1), peak: () => 600 });
const bare = makeSection({});
/** Both plates melted through their corner and no metal left on them. */
const melted = makeSection({ peak: lineOfHeat(0, 0, 3) });
/** Metal on the right plate alone, the corner melted beside it. */
const beside = makeSection({
  surface: (u, plate) => (u > 1.5 && u < 5 ? plate + 1.2 : plate),
  peak: lineOfHeat(1, 0.5, 4),
});

const JUDGED = { from_mm: 20, to_mm: 49 };
const beadOf = (survey: Survey) => readBead(survey, 0.75, JUDGED, null).bead;
const said = (survey: Survey, reasons: ('vertical-down' | 'no-climb')[] = []): string | null =>
  tiedInSaid({
    bead: { ...beadOf(survey), start: null, stops: [] },
    lines: [],
    reasons: reasons.map((code) => ({ code, text: '' })),
  });

describe('the opened root', () => {
  it('read "100 % of the judged length tied in" of a run that stopped half way', () => {
    const half = new Survey((y) => (y < 35 ? tied : bare));
    const { rootFusedShare, bare_mm } = beadOf(half);
    expect(rootFusedShare).toBe(1);
    expect(words.strip.share(wholePercent(rootFusedShare!), bare_mm.length === 0)).toBe(
      '100 % of the weld there is tied in',
    );
    expect(words.strip.share(100, true)).toBe('100 % of the judged length tied in');
    expect(said(half)).toBe('tied in at the root over 100 % of the weld there is; 15 mm of the judged length are bare');
    expect(stripSvg(openedRoot(half, 60), teeJoint, { judged: JUDGED })).toContain('100 % of the weld there is');
  });

  it('read 100 % with a millimetre in three hundred not tied in', () => {
    expect(wholePercent(299 / 300)).toBe(99);
    expect(wholePercent(1 / 300)).toBe(1);
    expect([wholePercent(0), wholePercent(0.5), wholePercent(1)]).toEqual([0, 50, 100]);
  });

  it('counted plates that melted and kept no metal as fused', () => {
    const strip = openedRoot(new Survey(() => melted), 10);
    expect(strip.every((p) => p.rootFusionA_mm > 0 && !p.welded && !p.fused)).toBe(true);
  });

  it('read a root as tied in that no metal lies over', () => {
    const reading = readSection(beside)!;
    expect(reading.station.rootFused).toBe(false);
    expect(reading.station.rootFusion_mm).toBeLessThan(0);
    expect(readSection(tied)!.station.rootFused).toBe(true);
    expect(readSection(cold)!.station.rootFused).toBe(false);
  });

  it('showed a weld made downwards as tied in, beside a sentence that called it hardly fused', () => {
    const survey = new Survey(() => tied);
    expect(weldedDown({ reasons: [{ code: 'vertical-down', text: '' }] })).toBe(true);
    expect(said(survey, ['vertical-down'])).toBe('root not judged: welded downwards');
    expect(said(survey, ['no-climb'])).toContain('100 %');
    const svg = stripSvg(openedRoot(survey, 60), teeJoint, { judged: JUDGED, weldedDown: true });
    expect(svg).toContain('welded downwards: not judged');
    expect(svg).not.toMatch(/url\(#strip-torn\)|tied in/);
    expect(svg).toContain('stroke-dasharray');
    expect(words.strip.weldedDown).not.toContain('tied in');
  });

  it('drew and counted a root just past the corner, nearer to it than it can be read, as tied in', () => {
    const near = makeSection({ face: segmentFace(6, 1), peak: lineOfHeat(2, 2, 2.63) });
    const { rootFusion_mm, rootFused } = readSection(near)!.station;
    expect(rootFused).toBe(true);
    expect(rootFusion_mm).toBeGreaterThan(0);
    expect(rootFusion_mm).toBeLessThan(0.15);
    const survey = new Survey((y) => (y < 35 ? tied : near));
    expect(said(survey)).toBe('tied in at the root over 50 % of the judged length, in doubt over 50 %');
    const svg = stripSvg(openedRoot(survey, 60), teeJoint, { judged: JUDGED });
    expect(svg).toContain('tied in at the root over 50 % of the judged length, in doubt over 50 %');
    expect(svg).toContain('url(#strip-doubt)');
  });
});

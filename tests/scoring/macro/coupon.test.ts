import { describe, expect, it } from 'vitest';
import { byHandOn, couponReport, type Line, pictureEnds, pictureHead, readCoupon } from '../../../scoring/index.ts';
import { byHand } from '../../../scoring/macro/by-hand.ts';
import { placeMarks } from '../../../scoring/macro/joint-frame.ts';
import { readMarks } from '../../../scoring/macro/read-marks.ts';
import { couponOf, fusedAt, type MadeCoupon, marksOf, plain } from './marked.ts';

const scaleFor = (c: MadeCoupon) => {
  const scale = { mmPerPx: 1 / c.pxPerMm, length_px: 20 * c.pxPerMm };
  return { alongA: scale, alongB: scale };
};
const readingsOf = (c: MadeCoupon) => readMarks(placeMarks(marksOf(c), scaleFor(c)), couponOf(c).joint);
const line = (lines: readonly Line[], measure: string, side: Line['side'] = null): Line => {
  const found = lines.find((l) => l.measure === measure && l.side === side);
  if (!found) throw new Error(`no line ${measure}`);
  return found;
};

describe('a cut read by its marks', () => {
  it.each([
    plain,
    { ...plain, turn_deg: 12 },
    { ...plain, turn_deg: -34, pxPerMm: 21 },
    { ...plain, crown_mm: -0.6 },
    { ...plain, legA_mm: 4.1, legB_mm: 7.3, crown_mm: 1.4 },
  ])('gives back what it was made with: %o', (c) => {
    const r = readingsOf(c);
    const width = Math.hypot(c.legA_mm, c.legB_mm);
    expect(r.legA_mm).toBeCloseTo(c.legA_mm, 2);
    expect(r.legB_mm).toBeCloseTo(c.legB_mm, 2);
    expect(r.faceWidth_mm).toBeCloseTo(width, 2);
    expect(Math.abs(r.convexity_mm - Math.max(0, c.crown_mm))).toBeLessThan(0.03);
    expect(Math.abs(r.concavity_mm - Math.max(0, -c.crown_mm))).toBeLessThan(0.03);
    expect(r.theoreticalThroat_mm).toBeCloseTo((c.legA_mm * c.legB_mm) / width, 2);
    expect(r.fusionDepthA_mm).toBeCloseTo(c.fused_mm - 2, 2);
    expect(r.fusionDepthB_mm).toBeCloseTo(c.fused_mm - 2, 2);
    // Straight between the marks at 0.2 and 1 mm; the circle itself bulges past that line by a few hundredths.
    expect(Math.abs((r.rootFusion_mm ?? 0) - fusedAt(c, 0.375))).toBeLessThan(0.06);
    // At the toes of the circle the tangent stands at twice the angle whose tangent is crown over half the chord.
    const bend = (2 * Math.atan(c.crown_mm / (width / 2)) * 180) / Math.PI;
    const flatA = 180 - (Math.atan2(c.legB_mm, c.legA_mm) * 180) / Math.PI;
    expect(Math.abs(r.toeAngleA_deg - (flatA - bend))).toBeLessThan(3);
  });

  it('takes a gap off the throat and starts the standing plate above it', () => {
    const shut = readingsOf(plain);
    const open = readingsOf({ ...plain, gap_mm: 1 });
    expect(open.size_mm).toBeCloseTo(shut.size_mm - 1, 2);
    expect(open.fusionDepthB_mm).toBeCloseTo(shut.fusionDepthB_mm ?? 0, 2);
  });

  it('reads bare face between root and fusion as short of the root', () => {
    const marks = marksOf(plain);
    const p = (a: number, deep: number) => ({ x: 900 + 63 * a, y: 1100 + 63 * deep });
    marks.fusionA = [p(1.2, 0), p(2, 0.6), p(3, 0.9), p(4.4, 0.4)];
    const r = readMarks(placeMarks(marks, scaleFor(plain)), couponOf(plain).joint);
    expect(r.rootFusionA_mm).toBeLessThan(-1.1);
    expect(r.rootFusionA_mm).toBeGreaterThan(-1.5);
    expect(r.rootFusion_mm).toBe(r.rootFusionA_mm);
  });

  it('says nothing of a root the fusion marks do not reach', () => {
    const marks = marksOf(plain);
    marks.fusionA = marks.fusionA.slice(2);
    const r = readMarks(placeMarks(marks, scaleFor(plain)), couponOf(plain).joint);
    expect(r.rootFusion_mm).toBeNull();
    expect(r.leastFusionA_mm).toBeNull();
    expect(r.fusionDepthA_mm).toBeCloseTo(1.1, 2);
  });
});

describe('a coupon judged', () => {
  it('has the lines of its profile with what a hand may be off', () => {
    const { lines, verdict } = couponReport(couponOf(plain));
    expect(line(lines, 'leg').reading).toBeCloseTo(5.4, 1);
    expect(line(lines, 'convexity').plusMinus).toBeCloseTo(byHand.convexity, 1);
    expect(line(lines, 'root fusion').plusMinus).toBeGreaterThanOrEqual(byHand['root fusion']);
    expect(verdict).toBe('within');
    for (const l of lines) expect(l.y_mm).toBe(30);
  });

  it('is outside when the leg is short of the size by more than a hand can be off, too close when by less', () => {
    const short = (leg: number) => couponReport(couponOf({ ...plain, legA_mm: leg, legB_mm: leg, crown_mm: 0.3 }));
    expect(line(short(4.2).lines, 'leg').verdict).toBe('outside');
    expect(short(4.2).verdict).toBe('outside');
    expect(line(short(4.95).lines, 'leg').verdict).toBe('too close to call');
  });

  it('is outside when the root was not reached', () => {
    const coupon = couponOf(plain);
    const p = (a: number, deep: number) => ({ x: 900 + 63 * a, y: 1100 + 63 * deep });
    coupon.marks.fusionA = [p(1.2, 0), p(2, 0.6), p(3, 0.9), p(4.4, 0.4)];
    expect(line(couponReport(coupon).lines, 'root fusion').verdict).toBe('outside');
  });

  it('gets no verdict while the root is not marked, and says what was not measured', () => {
    const coupon = couponOf(plain);
    coupon.marks.fusionB = [];
    const { verdict, notMeasured, lines } = couponReport(coupon);
    expect(verdict).toBe('no verdict');
    expect(notMeasured.map((n) => n.what)).toContain('root fusion');
    expect(lines.some((l) => l.measure === 'root fusion')).toBe(false);
  });

  it('judges undercut only where one was marked', () => {
    const coupon = couponOf(plain);
    expect(couponReport(coupon).lines.some((l) => l.measure === 'undercut')).toBe(false);
    coupon.marks.undercutA = { x: 900 + 63 * 6.6, y: 1100 + 63 * 1.5 };
    const found = line(couponReport(coupon).lines, 'undercut', 'A');
    expect(found.reading).toBeCloseTo(1.5, 2);
    expect(found.verdict).toBe('outside');
  });

  it('keeps inch tables in inches', () => {
    const mm = couponReport(couponOf(plain));
    const inch = couponReport(couponOf(plain, { profile: 'aws-d11-static-inch' }));
    const [m, i] = [line(mm.lines, 'convexity'), line(inch.lines, 'convexity')];
    expect(i.unit).toBe('in');
    expect(i.reading * 25.4).toBeCloseTo(m.reading, 2);
    expect(i.plusMinus * 25.4).toBeCloseTo(m.plusMinus, 1);
  });

  it('is off by more on a coarse picture and a short scale', () => {
    const fine = byHandOn('leg', 6, { mmPerPx: 0.02, length_px: 1000 });
    expect(fine).toBeCloseTo(0.25, 2);
    expect(byHandOn('leg', 6, { mmPerPx: 0.2, length_px: 50 })).toBeGreaterThan(0.5);
    expect(byHandOn('toe angle', 135, { mmPerPx: 0.2, length_px: 50 })).toBe(10);
  });
});

describe('marks that cannot be read', () => {
  it.each<[string, (c: ReturnType<typeof couponOf>) => void, RegExp]>([
    ['a scale too short', (c) => (c.scale.to = { x: c.scale.from.x + 5, y: 1500 }), /scale: found two points 5 pixels/],
    ['a length of nothing', (c) => (c.scale.length_mm = 0), /scale\.length_mm: found 0/],
    ['plates askew', (c) => (c.marks.plateB = { x: 600, y: 400 }), /plates at \d+° to each other, allowed: 90°/],
    ['another version', (c) => Object.assign(c, { version: 9 }), /version: found 9/],
    ['another format', (c) => Object.assign(c, { format: 'toehold-recording' }), /format: found "toehold-recording"/],
    ['a field too many', (c) => Object.assign(c, { mark: 'A+' }), /mark: found "A\+", allowed: no such field/],
    ['no face', (c) => (c.marks.face = []), /marks\.face: found a list of 0/],
  ])('%s', (_, spoil, message) => {
    const coupon = couponOf(plain);
    spoil(coupon);
    expect(() => readCoupon(JSON.stringify(coupon), 'cut.coupon.json')).toThrow(message);
    expect(() => readCoupon(JSON.stringify(coupon), 'cut.coupon.json')).toThrow(/^cut\.coupon\.json/);
  });

  it('a toe behind the root, a face point outside the toes', () => {
    const behind = couponOf(plain);
    behind.marks.toeA = { x: 500, y: 1100 };
    expect(() => couponReport(behind)).toThrow(/marks\.(toeA|face)/);
    const astray = couponOf(plain);
    astray.marks.face = [{ x: 1700, y: 1090 }];
    expect(() => couponReport(astray)).toThrow(/outside the two toes/);
  });

  it('comes back from its file as it went', () => {
    const coupon = couponOf(plain);
    expect(readCoupon(JSON.stringify(coupon))).toEqual(coupon);
    expect(couponReport(readCoupon(JSON.stringify(coupon)))).toEqual(couponReport(coupon));
  });
});

describe('picture files', () => {
  const png = (w: number, h: number): Uint8Array =>
    Uint8Array.from([
      ...[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52],
      ...[w >>> 24, (w >> 16) & 255, (w >> 8) & 255, w & 255, h >>> 24, (h >> 16) & 255, (h >> 8) & 255, h & 255],
      ...[8, 2, 0, 0, 0],
    ]);
  const jpeg = (w: number, h: number): Uint8Array =>
    Uint8Array.from([
      ...[0xff, 0xd8, 0xff, 0xe1, 0, 6, 1, 2, 3, 4, 0xff, 0xc4, 0, 4, 0, 0],
      ...[0xff, 0xc2, 0, 17, 8, h >> 8, h & 255, w >> 8, w & 255, 3, 0, 0, 0, 0],
    ]);

  it('tell their size before they are unpacked', () => {
    expect(pictureHead(png(1800, 1200), 9000, 'a.png')).toEqual({
      kind: 'image/png',
      width_px: 1800,
      height_px: 1200,
    });
    expect(pictureHead(jpeg(4032, 3024), 9000, 'a.jpg')).toEqual({
      kind: 'image/jpeg',
      width_px: 4032,
      height_px: 3024,
    });
  });

  it('are seen to be cut off', () => {
    const bytes = (...all: number[]) => Uint8Array.from(all);
    expect(pictureEnds('image/png', bytes(1, 2, 0, 0, 0, 0, 0x49, 0x45, 0x4e, 0x44, 0xae, 0x42, 0x60, 0x82))).toBe(
      true,
    );
    expect(pictureEnds('image/png', bytes(1, 2, 3, 4, 0x49, 0x44, 0x41, 0x54, 9, 8, 7, 6, 5, 4))).toBe(false);
    // A telephone's film behind the photograph.
    expect(pictureEnds('image/jpeg', bytes(7, 7, 0xff, 0x00, 0xff, 0xd9, 1, 2, 3))).toBe(true);
    expect(pictureEnds('image/jpeg', bytes(7, 7, 0xff, 0x00, 0xd9, 1, 2, 0xff))).toBe(false);
  });

  it.each<[string, Uint8Array, number, RegExp]>([
    ['another format', new TextEncoder().encode('GIF89a and so on'), 100, /neither PNG nor JPEG/],
    ['a text', new TextEncoder().encode('<svg/>'), 6, /neither PNG nor JPEG/],
    ['nothing', new Uint8Array(0), 0, /neither PNG nor JPEG/],
    ['a cut-off PNG', png(1800, 1200).subarray(0, 12), 12, /cut off or damaged/],
    ['a cut-off JPEG', jpeg(1800, 1200).subarray(0, 9), 9, /cut off or damaged/],
    ['one that unpacks to gigabytes', png(60_000, 60_000), 5000, /60000 by 60000 pixels/],
    ['a file too large', png(1800, 1200), 80e6, /80 MB/],
    ['a stamp', png(32, 32), 500, /at least 100 pixels/],
  ])('are refused: %s', (_, bytes, size, message) => {
    expect(() => pictureHead(bytes, size, 'photo')).toThrow(message);
  });
});

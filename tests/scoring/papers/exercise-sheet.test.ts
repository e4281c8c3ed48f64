import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { exerciseHtml, exerciseNamed, exercisePaper, exercises } from '../../../scoring/index.ts';

describe('the sheet of an exercise', () => {
  it('has weave, settings, limits and a card for the booth', () => {
    const { document } = parseHTML(exerciseHtml(exercisePaper(exerciseNamed('tee-inverted-v')!)));
    const text = document.body.textContent ?? '';
    // 5.8 m/min is 5.8 m in 60 s, so 0.58 m in six.
    for (const said of [
      '6 s of wire, measured58 cm',
      'Volts at the arc20.5 V',
      '0.9 cycles a second',
      'cuts fixed at 37, 51, 66',
    ])
      expect(text).toContain(said);
    expect(document.querySelector('.weave svg')).not.toBeNull();
    expect(document.querySelectorAll('td.blank').length).toBe(2);
  });

  it('draws a wait at a toe as a dot where the wait is, and none where there is none', () => {
    const vee = exerciseNamed('tee-inverted-v')!;
    const dots = (demonstration: Partial<typeof vee.demonstration>): number[] =>
      [
        ...exercisePaper({ ...vee, demonstration: { ...vee.demonstration, ...demonstration } }).weave.svg.matchAll(
          /<circle cx="([\d.]+)"/g,
        ),
      ].map((m) => Number(m[1]));
    const both = dots({});
    expect(new Set(both).size).toBe(2);
    // Right is right: the toe without a wait loses its dots.
    expect(new Set(dots({ pauseA_s: 0 }))).toEqual(new Set([Math.min(...both)]));
    expect(new Set(dots({ pauseB_s: 0 }))).toEqual(new Set([Math.max(...both)]));
  });

  it('leaves feed and volts out where the trainee sets them by ear', () => {
    const text = exerciseHtml(exercisePaper(exerciseNamed('settings-by-ear')!));
    expect(text).toContain('set by ear');
    expect(text).not.toContain('3.2 m/min');
  });

  it('says that a limit is from memory in a footnote, and only where one is', () => {
    const sheets = exercises.map((e) => exercisePaper(e));
    for (const sheet of sheets) {
      expect(sheet.limits.length).toBeGreaterThan(2);
      expect(sheet.provenance !== '').toBe(sheet.limits.some((limit) => limit.rule.endsWith('\u00b9')));
    }
  });

  it('takes hostile words for words', () => {
    const html = exerciseHtml(
      exercisePaper({ ...exerciseNamed('lap-5')!, title: '<script>alert(1)</script>', story: '"><img src=x>' }),
    );
    expect(html).not.toMatch(/<script|<img/);
  });
});

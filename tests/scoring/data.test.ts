import { describe, expect, it } from 'vitest';
import { exerciseSchema, exercises, profileNamed, profileSchema, profiles } from '../../scoring/index.ts';

describe('ready exercises', () => {
  it('number at least eight, each named once', () => {
    expect(exercises.length).toBeGreaterThanOrEqual(8);
    expect(new Set(exercises.map((e) => e.name)).size).toBe(exercises.length);
  });
  it.each(exercises.map((e) => [e.name, e] as const))('%s is a valid exercise with a known profile', (_name, e) => {
    expect(exerciseSchema.parse(e)).toEqual(e);
    expect(profileNamed(e.profile)).toBeDefined();
    // A single pass of short-circuiting stays at 6 mm or less (BOOTH practice: over that a qualified procedure is needed).
    expect(e.asked.size_mm).toBeLessThanOrEqual(6);
  });
});

describe('acceptance profiles', () => {
  it.each(profiles.map((p) => [p.name, p] as const))('%s is valid and says where it comes from', (_name, p) => {
    expect(profileSchema.parse(p)).toEqual(p);
    expect(p.source.length).toBeGreaterThan(20);
  });
});

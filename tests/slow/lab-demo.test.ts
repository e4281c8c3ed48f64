import { afterAll, describe, expect, it } from 'vitest';
import { fillDemo } from '../../scoring/lab/demo.ts';
import { newLab, Person } from '../lab/support/school.ts';
import { stopServer } from '../lab/support/stores.ts';

afterAll(stopServer);

describe('an invented class to look round in', () => {
  it('is a term of attempts that the lab scores itself, good and bad ones, and never lands among a school’s own', async () => {
    const t = await newLab();
    const now = new Date();
    const demo = await fillDemo(t.lab.parts, now);
    const maud = new Person(t.lab);
    await maud.must('POST', '/api/login', { name: demo.instructor, password: demo.password });
    const { classes } = await maud.must('GET', '/api/classes');
    await demo.filled;
    const path = `/api/classes/${classes[0]!.id}/attempts`;
    const all = async () => [...(await maud.must('GET', path)).attempts];
    await expect
      .poll(async () => (await all()).filter((a) => String(a.state) === 'waiting').length, {
        timeout: 300_000,
        interval: 1000,
      })
      .toBe(0);
    const attempts = await all();
    expect(attempts).toHaveLength(20);
    expect(attempts.filter((a) => String(a.state) === 'scored')).toHaveLength(20);
    expect(new Set(attempts.map((a) => String(a.verdict))).size).toBeGreaterThan(1);
    const ages = attempts.map((a) => (now.getTime() - Date.parse(String(a.received))) / 86_400_000);
    expect(Math.max(...ages) - Math.min(...ages)).toBeGreaterThan(30);
    // Something to look round in: everybody has a mark, and nothing is left out of it.
    const klass = `/api/classes/${classes[0]!.id}`;
    for (const { id } of (await maud.must('GET', `${klass}/assignments`)).assignments) {
      const { marks } = await maud.must('GET', `${klass}/assignments/${id}/marks`);
      expect(marks).toHaveLength(5);
      for (const { computed } of marks) expect(computed).toMatchObject({ mark: expect.any(Number), leftOut: [] });
    }
    await expect(fillDemo(t.lab.parts, now)).rejects.toThrow('a lab that has instructors');
    await t.end();
  }, 900_000);
});

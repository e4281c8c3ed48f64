import { describe, expect, it } from 'vitest';
import { readAttemptName } from '../../../../scoring/index.ts';
import { MapStores } from '../../support/map-stores.ts';
import { type Path, TestBench } from '../../support/test-bench.ts';

// Everybody here is invented.
const climb: Path = (t_s) => ({ u_mm: 0, y_mm: 4 + 2 * t_s });

async function attempt(bench: TestBench): Promise<void> {
  bench.session.again();
  bench.wait(0.1).press(0, 4).follow(climb, 1).release();
  bench.session.finish();
  await bench.finished();
  await bench.settle();
}

describe('the next trainee', () => {
  it('is written into the attempt and into the name it is saved by, counted through the day', async () => {
    const bench = new TestBench({ length_mm: 25 });
    expect(bench.session.trainees.next(' Inés  Calder', 'b2')).toBe(true);
    for (let n = 1; n <= 2; n++) await attempt(bench);
    bench.session.save();
    const [{ name, content }] = bench.saved;
    expect(content).toMatchObject({ trainee: { name: 'Inés Calder', bench: 'b2' } });
    expect(name).toBe('2026-03-14_b2_inés-calder_free-attempt_02.json');
    expect(readAttemptName(name)).toMatchObject({
      date: '2026-03-14',
      bench: 'b2',
      trainee: 'inés-calder',
      attempt: 2,
    });
  });

  it('begins with a first attempt of their own, a cold piece, and a level of their own', async () => {
    const bench = new TestBench({ length_mm: 25 });
    bench.session.trainees.next('Ines Calder', 'b2');
    await attempt(bench);
    bench.session.trainees.next('17', '');
    expect(bench.state.finished.value).toBeNull();
    await attempt(bench);
    bench.session.save();
    expect(bench.saved[0]!.name).toBe('2026-03-14_-_17_free-attempt_01.json');
  });

  it('is still there after a reload, until forgotten', () => {
    const bench = new TestBench();
    bench.session.trainees.next('Ines Calder', 'b2');
    const later = new TestBench({ preferences: bench.kept });
    expect(later.state.preferences.value).toMatchObject({ trainee: 'Ines Calder', bench: 'b2' });
  });

  it('is refused where a name cannot be one, and whoever was there stays', () => {
    const bench = new TestBench();
    bench.session.trainees.next('Ines Calder', 'b2');
    expect(bench.session.trainees.next('🙂', 'b3')).toBe(false);
    expect(bench.state.problem.value).toMatchObject({ code: 'input' });
    expect(bench.state.preferences.value).toMatchObject({ trainee: 'Ines Calder', bench: 'b2' });
  });

  it('follows on the roster, and after the last there is nobody', () => {
    const { session } = new TestBench();
    expect(session.trainees.following()).toBeNull();
    expect(session.trainees.roster('Name;Bench\nInes Calder;b2\nPia Lindqvist;\n')).toBe(2);
    expect(session.trainees.following()).toMatchObject({ name: 'Ines Calder', bench: 'b2' });
    session.trainees.next('Ines Calder', 'b2');
    expect(session.trainees.following()).toMatchObject({ name: 'Pia Lindqvist', bench: null });
    session.trainees.next('Pia Lindqvist', '');
    expect(session.trainees.following()).toBeNull();
  });

  it('is not changed by a roster that cannot be read', () => {
    const { session, state } = new TestBench();
    session.trainees.roster('Ines Calder\n');
    expect(session.trainees.roster('Ines\nInes\n', 'class.csv')).toBe(0);
    expect(state.preferences.value.roster.map((p) => p.name)).toEqual(['Ines Calder']);
    expect(state.problem.value).toMatchObject({ code: 'input', error: { file: 'class.csv' } });
  });
});

describe('forgetting', () => {
  it('takes the names out of the settings, and the attempts that carry one when asked', async () => {
    const stores = new MapStores();
    const bench = new TestBench({ length_mm: 25, stores });
    await attempt(bench);
    bench.session.trainees.roster('Ines Calder\n');
    bench.session.trainees.next('Ines Calder', 'b2');
    await attempt(bench);
    expect(bench.session.trainees.named()).toHaveLength(1);
    await bench.session.trainees.forget(false);
    expect(bench.state.preferences.value).toMatchObject({ trainee: null, bench: '', roster: [] });
    expect(JSON.stringify(bench.kept)).not.toContain('Calder');
    expect(bench.state.shelf.value).toHaveLength(2);
    await bench.session.trainees.forget(true);
    await bench.settle();
    expect(bench.state.shelf.value).toHaveLength(1);
    expect(JSON.stringify(await stores.attempts.entries())).not.toContain('Calder');
  });
});

describe('an attempt of a class', () => {
  it('opened from its file is saved by the name it came with', async () => {
    const bench = new TestBench({ length_mm: 25 });
    await attempt(bench);
    const name = '2026-01-02_b9_wren-hollis_lap-5_07.json';
    await bench.session.opener.file(bench.file(bench.state.finished.value!.recording, name));
    await bench.result();
    bench.session.save();
    expect(bench.saved[0]!.name).toBe(name);
  });
});

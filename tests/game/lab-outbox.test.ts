import { describe, expect, it } from 'vitest';
import { Outbox, type Parcel, type ParcelStore } from '../../game/lab/join/outbox.ts';
import { Refused } from '../../game/lab/line.ts';

function parcel(n: number, trainee = 'ines'): Parcel {
  const digest = String(n).padStart(64, '0');
  return {
    ...{ key: `${digest} a ${trainee}`, digest, trainee, name: trainee, assignment: 'a', title: 'Tee' },
    ...{ made_ms: n, bytes: new Uint8Array([n]), refused: null },
  };
}

/** A store in memory that outlives the page, a lab that does as it is told, a clock that is cranked. */
function bench() {
  const kept = new Map<string, Parcel>();
  const store: ParcelStore = {
    put: async (p) => void kept.set(p.key, p),
    all: async () => [...kept.values()],
    remove: async (key) => void kept.delete(key),
  };
  const lab = { taken: [] as string[], answer: (): unknown => null };
  const due: { ms: number; run: () => void }[] = [];
  const open = () =>
    new Outbox({
      store,
      send: async (p) => {
        const fault = lab.answer();
        // Taken before the answer is lost: what a connection that breaks off looks like from here.
        if (!(fault instanceof Refused)) lab.taken.push(p.key);
        if (fault !== null) throw fault;
      },
      after: (ms, run) => {
        const one = { ms, run };
        due.push(one);
        return () => void due.splice(due.indexOf(one), 1);
      },
    });
  return { kept, lab, due, open };
}

describe('attempts on their way to the lab', () => {
  it('stay until the lab has answered, wait longer each time, and go when it is back, also from another page', async () => {
    const b = bench();
    b.lab.answer = () => new TypeError('no network');
    const outbox = b.open();
    await outbox.belongsTo('ines');
    await outbox.add(parcel(1));
    await outbox.flush();
    const waits: number[] = [];
    for (let i = 0; i < 6; i++) {
      const [next] = b.due.splice(0);
      waits.push(next!.ms);
      next!.run();
      await outbox.flush();
      b.due.splice(0, b.due.length - 1);
    }
    expect(waits).toEqual([...waits].sort((x, y) => x - y));
    expect(waits.at(-1)).toBeLessThanOrEqual(60_000);
    expect(outbox.sending.value).toBe('no answer');
    expect([...b.kept.keys()]).toEqual([parcel(1).key]);

    b.lab.answer = () => null;
    const next = b.open();
    await next.belongsTo('ines');
    expect(b.kept.size).toBe(0);
    // Sent more than once, always as the same parcel: the lab counts it once.
    expect(new Set(b.lab.taken)).toEqual(new Set([parcel(1).key]));
    expect(next.sending.value).toBe('at rest');
  });

  it('go for their own trainee only, the oldest first', async () => {
    const b = bench();
    const outbox = b.open();
    await outbox.add(parcel(2));
    await outbox.add(parcel(1));
    await outbox.add(parcel(3, 'wren'));
    await outbox.flush();
    expect(b.lab.taken).toEqual([]);
    await outbox.belongsTo('ines');
    expect(b.lab.taken).toEqual([parcel(1).key, parcel(2).key]);
    expect(outbox.parcels.value.map((p) => p.trainee)).toEqual(['wren']);
  });

  it('wait for their trainee to join again when the session has ended, and for a lab that is busy', async () => {
    const b = bench();
    const outbox = b.open();
    await outbox.belongsTo('ines');
    b.lab.answer = () => new Refused(401, '', 'Log in first.');
    await outbox.add(parcel(1));
    await outbox.flush();
    expect(outbox.sending.value).toBe('join again');
    b.lab.answer = () => new Refused(503, '', 'The disk does not answer.');
    await outbox.flush();
    expect(outbox.sending.value).toBe('no answer');
    expect(b.kept.size).toBe(1);
  });

  it('that the browser will not keep are sent at once, and said where that fails too', async () => {
    const b = bench();
    b.kept.set = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    const outbox = b.open();
    await outbox.belongsTo('ines');
    await outbox.add(parcel(1));
    expect(b.lab.taken).toEqual([parcel(1).key]);
    b.lab.answer = () => new TypeError('no network');
    await outbox.add(parcel(2));
    expect(outbox.sending.value).toBe('not kept');
  });

  it('that the lab will not have stay with the reason and stop nobody else', async () => {
    const b = bench();
    const outbox = b.open();
    await outbox.belongsTo('ines');
    const answers = [new Refused(409, 'assignmentId', 'This exercise opens tomorrow.'), null];
    b.lab.answer = () => answers.shift() ?? null;
    await b.open().add(parcel(1));
    await outbox.add(parcel(2));
    await outbox.flush();
    expect(b.lab.taken).toEqual([parcel(2).key]);
    expect(outbox.parcels.value.map((p) => p.refused)).toEqual(['This exercise opens tomorrow.']);
    await outbox.forget(parcel(1).key);
    expect(b.kept.size).toBe(0);
  });
});

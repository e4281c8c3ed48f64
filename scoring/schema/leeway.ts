import { z } from 'zod';

/**
 * What an exercise may leave to the trainee, and how far: a range of what is a number, a choice of what is bought by kind. Settings of the
 * machine are in `process`; how the gun is held is in `hold`, where the device cannot tell, and is the hand's own where it can.
 */

/** A band a hand or a setting should stay in. */
export const band = z
  .strictObject({ from: z.number(), to: z.number() })
  .refine((b) => b.from <= b.to, 'a band whose `from` is not above its `to`');
/** From and to, both included. */
export type Band = z.infer<typeof band>;

const WIRES = [0.8, 0.9, 1.0, 1.2] as const;
const GASES = ['M21-ArC-18', 'M21-ArC-25', 'C1'] as const;

const kinds = <T extends string | number>(of: readonly T[]) =>
  z
    .array(z.literal(of))
    .min(2)
    .refine((chosen) => new Set(chosen).size === chosen.length, 'each of them once');

/** Settings left to the trainee; null, or left out: as given. */
export const leewaySchema = z.strictObject({
  feed_mpmin: band.nullable(),
  volts_V: band.nullable(),
  tip_mm: band.nullable().exactOptional(),
  nozzle_mm: band.nullable().exactOptional(),
  wire_mm: kinds(WIRES).nullable().exactOptional(),
  gas: kinds(GASES).nullable().exactOptional(),
  tipToWork_mm: band.nullable().exactOptional(),
  workAngle_deg: band.nullable().exactOptional(),
  travelAngle_deg: band.nullable().exactOptional(),
});

/** Settings left to the trainee. */
export type Leeway = z.infer<typeof leewaySchema>;
/** A setting an exercise may leave to the trainee. */
export type FreeSetting = keyof Leeway;

/** Numbers set at the machine that may be left free within a range. */
export const FREE_AT_MACHINE = ['feed_mpmin', 'volts_V', 'tip_mm', 'nozzle_mm'] as const;
/** What is chosen by kind. */
export const FREE_BY_KIND = ['wire_mm', 'gas'] as const;
/** How the gun is held. */
export const FREE_IN_HAND = ['tipToWork_mm', 'workAngle_deg', 'travelAngle_deg'] as const;

/** Whether anything is left to the trainee at all. */
export function leavesAnything(free: Leeway | undefined): boolean {
  return Object.values(free ?? {}).some((left) => left !== null);
}

/** Whether a setting is left to the trainee and stands where it may; false of one that is not left free. */
export function isLeft(free: Leeway | undefined, name: string, value: unknown): boolean {
  const left = free?.[name as FreeSetting] ?? null;
  if (left === null) return false;
  if (Array.isArray(left)) return (left as readonly unknown[]).includes(value);
  return typeof value === 'number' && value >= left.from && value <= left.to;
}

/** What is allowed, for a message. */
export function leftSaid(left: Band | readonly (string | number)[]): string {
  return 'from' in left ? `anything from ${left.from} to ${left.to}` : `one of ${left.join(', ')}`;
}

/** Settings with what is left to the trainee made one for all, so that two who set them otherwise compare alike. */
export function madeOne<T extends object>(settings: T, free: Leeway | undefined): T {
  return Object.fromEntries(
    Object.entries(settings).map(([name, value]) => {
      const left = free?.[name as FreeSetting] ?? null;
      return [name, left === null ? value : 'from' in left ? left.from : left[0]];
    }),
  ) as T;
}

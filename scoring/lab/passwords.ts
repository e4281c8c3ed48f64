import { randomBytes, randomInt, scrypt, timingSafeEqual } from 'node:crypto';

/** Work of one guess as a power of two. A PIN of six digits is kept by the limit on guesses; there is no work that would keep it. */
const COST = { password: 15, pin: 12 } as const;
const R = 8;
const LENGTH = 32;

/** A secret made unreadable: scrypt with its settings and salt in the text. */
export async function hashSecret(secret: string, kind: keyof typeof COST): Promise<string> {
  const salt = randomBytes(16);
  const key = await derive(secret, salt, COST[kind]);
  return ['scrypt', COST[kind], salt.toString('base64url'), key.toString('base64url')].join('$');
}

/** Whether a secret is the one hashed; takes as long whether there is one to compare with or not. */
export async function isSecret(secret: string, hash: string | null, kind: keyof typeof COST): Promise<boolean> {
  const [, cost, salt, key] = (hash ?? (await nobody(kind))).split('$');
  const own = await derive(secret, Buffer.from(salt!, 'base64url'), Number(cost));
  return timingSafeEqual(own, Buffer.from(key!, 'base64url')) && hash !== null;
}

/** Six digits. */
export function newPin(): string {
  return String(randomInt(1_000_000)).padStart(6, '0');
}

/** Letters and digits that cannot be mistaken for one another when read off a board. */
const CODE_LETTERS = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789';

export function newCode(length = 8): string {
  return Array.from({ length }, () => CODE_LETTERS[randomInt(CODE_LETTERS.length)]).join('');
}

const nobodys = new Map<string, Promise<string>>();
function nobody(kind: keyof typeof COST): Promise<string> {
  const known = nobodys.get(kind) ?? hashSecret(randomBytes(16).toString('hex'), kind);
  nobodys.set(kind, known);
  return known;
}

function derive(secret: string, salt: Buffer, cost: number): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    scrypt(
      secret.normalize('NFKC'),
      salt,
      LENGTH,
      { N: 2 ** cost, r: R, p: 1, maxmem: 256 * R * 2 ** cost },
      (error, key) => (error ? reject(error) : resolve(key)),
    );
  });
}

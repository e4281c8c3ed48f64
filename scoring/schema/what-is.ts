/** What a file that was opened may be. */
export const fileKinds = [
  'recording',
  'exercise',
  'profile',
  'coupon',
  'result',
  'logbook',
  'damaged',
  'json',
  'table',
  'page',
  'empty',
  'other',
] as const;
/** A kind of file by name. */
export type FileKind = (typeof fileKinds)[number];

/** Tells from its content what a file is, whatever its name; from the beginning only, so it may still be spoilt further down. */
export function whatIs(text: string): FileKind {
  const body = text.replace(/^\uFEFF/, '').trimStart();
  if (body === '') return 'empty';
  if (body.startsWith('{') || body.startsWith('[')) return kindOfJson(body);
  if (/^<(!doctype|html|svg|\?xml)/i.test(body)) return 'page';
  const [head = ''] = body.split(/\r?\n/, 1);
  return /[,;\t]/.test(head) && !/\p{Cc}/u.test(head.replaceAll('\t', '')) ? 'table' : 'other';
}

function kindOfJson(body: string): FileKind {
  const format = /"format"\s*:\s*"(toehold-[a-z]+)"/.exec(body.slice(0, 4000))?.[1];
  return kindOfFormat(format) ?? (/^\{\s*"kept"\s*:/.test(body) ? 'damaged' : 'json');
}

const FORMATS = ['recording', 'exercise', 'profile', 'coupon', 'result', 'logbook'] as const;

/** A kind of file that says its kind itself. */
export type OwnKind = (typeof FORMATS)[number];

/** The kind a file's `format` names; null where it names none of Toehold's. */
export function kindOfFormat(format: unknown): OwnKind | null {
  return FORMATS.find((kind) => format === `toehold-${kind}`) ?? null;
}

/** Licences under which code may stand in the page or be needed by the package; all allow use in a product under MIT with a notice. */
const ALLOWED = new Set([
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Apache-2.0',
  'OFL-1.1',
  'MPL-2.0',
  'Unlicense',
  'Zlib',
  'BlueOak-1.0.0',
  'CC0-1.0',
]);

/** Whether an SPDX expression, as packages write it, can be met with licences of the list: each of an "and", one of an "or". */
export function allowed(expression: string): boolean {
  const plain = expression.replace(/[()]/g, ' ').trim();
  return plain.split(/\s+OR\s+/).some((choice) => choice.split(/\s+AND\s+/).every((name) => ALLOWED.has(name.trim())));
}

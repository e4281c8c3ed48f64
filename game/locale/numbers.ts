/** Numbers as they stand on the page: a real minus sign, fixed decimals, no thousands. */
export function fixed(x: number, decimals: number): string {
  const text = Math.abs(x).toFixed(decimals);
  return x < 0 && Number(text) !== 0 ? `−${text}` : text;
}

export function whole(x: number): string {
  return fixed(x, 0);
}

export function oneDecimal(x: number): string {
  return fixed(x, 1);
}

export function twoDecimals(x: number): string {
  return fixed(x, 2);
}

export function seconds(x: number): string {
  return `${fixed(x, 2)} s`;
}

/** At most `decimals`, trailing zeros dropped: settings read as people say them. */
export function trimmed(x: number, decimals: number): string {
  const text = fixed(x, decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

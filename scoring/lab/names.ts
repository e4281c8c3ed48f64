/** A name as compared when somebody joins: case, accents' spelling, and runs of spaces do not matter. */
export function nameKey(name: string): string {
  return name.normalize('NFKC').trim().replaceAll(/\s+/g, ' ').toLocaleLowerCase('en');
}

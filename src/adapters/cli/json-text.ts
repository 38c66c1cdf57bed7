/**
 * JSON for programs, laid out so that people and `diff` can read it too.
 *
 * A dipstick that stands somewhere beyond a mark is an infinity inside, which JSON lacks: it is written as in a logbook.
 */
export function jsonText(value: unknown): string {
  return `${JSON.stringify(value, writeInfinity, 2)}\n`;
}

function writeInfinity(_key: string, value: unknown): unknown {
  if (value === Infinity) return 'above-full';
  return value === -Infinity ? 'below-low' : value;
}

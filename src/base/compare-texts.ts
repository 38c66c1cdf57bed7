/** Texts in the order of their UTF-16 code units, which no locale changes: for sorting ids, codes and messages. */
export function compareTexts(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/**
 * The greatest number that divides both of two whole numbers; the other one where one is 0.
 *
 * @example commonDivisor(12, 18) // 6
 */
export function commonDivisor(first: number, second: number): number {
  return second === 0 ? first : commonDivisor(second, first % second);
}

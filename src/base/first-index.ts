/**
 * The first index below `length` from which on something holds; `length` where it never does. O(log n).
 *
 * @example firstIndex(4, (at) => [1, 3, 3, 7][at] >= 3) // 1
 */
export function firstIndex(length: number, holds: (index: number) => boolean): number {
  let [low, high] = [0, length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

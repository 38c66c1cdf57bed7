/**
 * A stream of numbers that look random and are the same every time: what is simulated from them is a function of its inputs.
 *
 * Marsaglia's xorshift32 over a scrambled seed: plenty for a few hundred thousand draws, and quick.
 */
export interface RandomNumbers {
  /** At least 0, below 1. */
  uniform(): number;
  /** Standard normal (polar method). */
  normal(): number;
}

/** The stream that belongs to `seed`, a whole number. */
export function randomNumbers(seed: number): RandomNumbers {
  let state = Math.imul(seed ^ 0x9e37_79b9, 0x85eb_ca6b) | 1;
  const uniform = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4_294_967_296;
  };
  const normal = (): number => {
    for (;;) {
      const [x, y] = [uniform() * 2 - 1, uniform() * 2 - 1];
      const square = x * x + y * y;
      if (square > 0 && square < 1) return x * Math.sqrt((-2 * Math.log(square)) / square);
    }
  };
  for (let warm = 0; warm < 8; warm += 1) uniform();
  return { uniform, normal };
}

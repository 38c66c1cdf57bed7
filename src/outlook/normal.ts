/**
 * The normal and Student distributions, as far as intervals need them.
 */

/** Rational approximations of the normal quantile by P. J. Acklam (2003); relative error below 1.2e-9. */
const CENTRE = [
  [-39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269, -30.66479806614716, 2.506628277459239],
  [-54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572, 1],
] as const;
const TAIL = [
  [-0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968, 2.938163982698783],
  [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416, 1],
] as const;

/** The value below which a standard normal variable falls with probability `p`, 0 < p < 1. */
export function normalQuantile(p: number): number {
  if (p < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(p));
    return polynomial(TAIL[0], q) / polynomial(TAIL[1], q);
  }
  if (p > 1 - 0.02425) return -normalQuantile(1 - p);
  const q = p - 0.5;
  return (q * polynomial(CENTRE[0], q * q)) / polynomial(CENTRE[1], q * q);
}

/** The probability that a standard normal variable is below `z`; error below 1e-7 (Abramowitz & Stegun 26.2.17). */
export function normalProbability(z: number): number {
  if (z < 0) return 1 - normalProbability(-z);
  const t = 1 / (1 + 0.231_641_9 * z);
  const tail = polynomial([1.330274429, -1.821255978, 1.781477937, -0.356563782, 0.31938153, 0], t);
  return 1 - (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * tail;
}

/**
 * The value below which a Student variable with `freedom` degrees of freedom falls with probability `p`, 0.5 < p < 1.
 *
 * G. W. Hill, "Algorithm 396: Student's t-quantiles", CACM 13 (1970); exact for one and two degrees.
 */
export function studentQuantile(p: number, freedom: number): number {
  const both = 2 * (1 - p);
  if (freedom <= 1) return 1 / Math.tan((both * Math.PI) / 2);
  if (freedom === 2) return Math.sqrt(2 / (both * (2 - both)) - 2);
  const a = 1 / (freedom - 0.5);
  const b = 48 / (a * a);
  const c = ((20_700 * a) / b - 98) * a * a - 16 * a + 96.36;
  const d = ((94.5 / (b + c) - 3) / b + 1) * Math.sqrt((a * Math.PI) / 2) * freedom;
  const y = Math.pow(d * both, 2 / freedom);
  return Math.sqrt(freedom * (y > 0.05 + a ? hillCentre(p, freedom, a, b, c, d) : hillTail(y, freedom, d)));
}

function hillCentre(p: number, freedom: number, a: number, b: number, c: number, d: number): number {
  const x = -normalQuantile(p);
  const small = freedom < 5 ? 0.3 * (freedom - 4.5) * (x + 0.6) : 0;
  const scale = (((0.05 * d * x - 5) * x - 7) * x - 2) * x + b + c + small;
  const square = x * x;
  const z = (((((0.4 * square + 6.3) * square + 36) * square + 94.5) / scale - square - 3) / b + 1) * x;
  return Math.expm1(a * z * z);
}

function hillTail(y: number, freedom: number, d: number): number {
  const inner = 1 / (((freedom + 6) / (freedom * y) - 0.089 * d - 0.822) * (freedom + 2) * 3) + 0.5 / (freedom + 4);
  return ((inner * y - 1) * (freedom + 1)) / (freedom + 2) + 1 / y;
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);
}

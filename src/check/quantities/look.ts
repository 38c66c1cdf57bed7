/**
 * The inspection interval that finds a failure in time: I = PF / n, n = ln(Pacc) / ln(1 − θ).
 *
 * PF: from the first sign to the failure; θ: the chance that one look finds the sign; Pacc: the chance of missing it that is put up with.
 * Source: NAVAIR 00-25-403. PF 100 h, θ 90 %, Pacc 0.1 % gives n = 3 and 33.3 h.
 */

/** Looks per PF interval; may be less than 1. */
function looksNeeded(finding: number, missing: number): number {
  return Math.log(missing) / Math.log(1 - finding);
}

/** The PF interval divided by the looks needed, at least one look, rounded down so that no look comes later than the formula says. */
export function lookInterval(size: number, finding: number, missing: number): number {
  // ln(0.001)/ln(0.1) is 2.9999999999999996 in binary; a whole number of looks must stay whole.
  const looks = Math.max(1, Number(looksNeeded(finding, missing).toPrecision(12)));
  return Math.floor(size / looks);
}

/**
 * Numbers as people read them, the same in every country: a point, no grouping, no trailing zeros.
 */

/**
 * @param places most decimal places to show; fewer where the rest are zeros.
 * @example numberText(1299.9) // "1299.9"
 */
export function numberText(value: number, places = 2): string {
  if (!Number.isFinite(value)) return String(value);
  const fixed = value.toFixed(places);
  const trimmed = fixed.includes('.') ? fixed.replace(/0+$/, '').replace(/\.$/, '') : fixed;
  return trimmed === '-0' ? '0' : trimmed;
}

/**
 * Ticks of an hour as hours and minutes, to the nearest minute.
 *
 * @example durationText(48600) // "1 h 21 min"
 */
export function durationText(ticks: number): string {
  const minutes = Math.round(Math.abs(ticks) / 600);
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  const parts = [...(hours > 0 ? [`${hours} h`] : []), ...(rest > 0 || hours === 0 ? [`${rest} min`] : [])];
  return `${ticks < 0 && minutes > 0 ? '-' : ''}${parts.join(' ')}`;
}

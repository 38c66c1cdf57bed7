/** A time that a person plans by: "45 s", "3 min", "1 h 5 min". Beyond a minute, seconds are rounded up to a half minute. */
export function secondsInWords(seconds: number): string {
  if (seconds < 60) return `${seconds} s`;
  const halves = Math.ceil(seconds / 30);
  const hours = Math.floor(halves / 120);
  const minutes = (halves % 120) / 2;
  const shown = `${Math.floor(minutes)}${minutes % 1 === 0 ? '' : '½'} min`;
  if (hours === 0) return shown;
  return minutes === 0 ? `${hours} h` : `${hours} h ${shown}`;
}

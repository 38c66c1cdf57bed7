/**
 * Hours of an ISO 8601 duration (`PT8376H12M`, `P12DT3H`), as AEMP 1.2 writes meters; `null` for anything else.
 *
 * Years and months have no fixed length and are refused. Every part may have a decimal fraction only if it is the last.
 *
 * @example hoursOfDuration('P1DT2H30M') // 26.5
 */
export function hoursOfDuration(text: string): number | null {
  const match =
    /^P(?:(\d+(?:[.,]\d+)?)W|(?:(\d+(?:[.,]\d+)?)D)?(?:T(?=\d)(?:(\d+(?:[.,]\d+)?)H)?(?:(\d+(?:[.,]\d+)?)M)?(?:(\d+(?:[.,]\d+)?)S)?)?)$/.exec(
      text.trim(),
    );
  if (match === null) return null;
  const parts = match.slice(1);
  const written = parts.filter((part) => part !== undefined);
  if (written.length === 0 || written.slice(0, -1).some((part) => /[.,]/.test(part))) return null;
  const [weeks = 0, days = 0, hours = 0, minutes = 0, seconds = 0] = parts.map((part) =>
    part === undefined ? 0 : Number(part.replace(',', '.')),
  );
  // In seconds first: 1/3600 h has no exact form.
  return ((weeks * 7 + days) * 86_400 + hours * 3600 + minutes * 60 + seconds) / 3600;
}

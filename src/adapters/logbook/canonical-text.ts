/**
 * JSON with sorted members and no white space, as RFC 8785 has it, so that equal data give equal text.
 *
 * Members that are `undefined` are left out, as `JSON.stringify` does. Only plain JSON data make sense here.
 */
export function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((item) => canonicalText(item ?? null)).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value ?? null);
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    // RFC 8785 §3.2.3: by UTF-16 code units, which is how JavaScript compares texts.
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return `{${members.map(([name, member]) => `${JSON.stringify(name)}:${canonicalText(member)}`).join(',')}}`;
}

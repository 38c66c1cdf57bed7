/** Whether two plain values (objects, arrays and maps of such) say the same. */
export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((item, i) => isSame(item, b[i]));
  if (a instanceof Map)
    return b instanceof Map && a.size === b.size && [...a].every(([key, value]) => b.has(key) && isSame(value, b.get(key)));
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => isSame(Reflect.get(a, key), Reflect.get(b, key)));
}

/** A member of a draft entry that holds some values; no member where there are none. */
export function filled<K extends string, V>(key: K, values: Readonly<Record<string, V>>): { readonly [P in K]?: Record<string, V> } {
  return (Object.keys(values).length === 0 ? {} : { [key]: { ...values } }) as { readonly [P in K]?: Record<string, V> };
}

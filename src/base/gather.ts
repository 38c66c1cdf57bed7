/** Adds to the list under a key. */
export function addTo<K, T>(lists: Map<K, T[]>, key: K, item: T): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [item]);
  else list.push(item);
}

/** Items by name or number, each list in the order given. */
export function gather<K, T>(items: readonly T[], keyOf: (item: T) => K): ReadonlyMap<K, readonly T[]> {
  const lists = new Map<K, T[]>();
  for (const item of items) addTo(lists, keyOf(item), item);
  return lists;
}

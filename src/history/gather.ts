/** Items by name, each list in the order given. */
export function gather<T>(items: readonly T[], nameOf: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const lists = new Map<string, T[]>();
  for (const item of items) {
    const name = nameOf(item);
    const list = lists.get(name);
    if (list === undefined) lists.set(name, [item]);
    else list.push(item);
  }
  return lists;
}

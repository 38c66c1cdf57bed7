/** Words in a row. @example listed(['a', 'b', 'c'], 'and') // 'a, b and c' */
export function listed(words: readonly string[], joint = 'and'): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${joint} ${last}`;
}

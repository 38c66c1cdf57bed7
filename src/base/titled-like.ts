/**
 * Of some things with titles those that somebody may mean who says a few words of it: each word begins one of the title or of the name.
 *
 * @example titledLike('oil filt', [{ id: 'change-oil', title: 'Change the oil and its filter' }]) // that one
 */
export function titledLike<T extends { readonly id: string; readonly title: string }>(said: string, things: readonly T[]): readonly T[] {
  const wanted = wordsOf(said);
  if (wanted.length === 0) return [];
  return things.filter(({ id, title }) => {
    const own = wordsOf(`${title} ${id}`);
    return wanted.every((word) => own.some((each) => each.startsWith(word)));
  });
}

function wordsOf(text: string): readonly string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}

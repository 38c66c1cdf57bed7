import type { Definition } from './model.js';

/** The words that can be said of a thing, in the order in which it declares them; undefined for what no word goes with. */
export function wordsOf(definition: Definition): readonly string[] | undefined {
  const { node } = definition;
  switch (node.kind) {
    case 'position':
      return node.positions.map(({ name }) => name.text);
    case 'attachment':
      return ['on', 'off'];
    case 'defect':
      return ['open', 'closed', ...(classesOf(definition) ?? [])];
    case 'gauge':
      return node.bands.map(({ name }) => name.text);
    case 'dipstick':
      return ['low', 'full'];
    default:
      return undefined;
  }
}

/** The classes of a defect; undefined for what is none. */
export function classesOf({ node }: Definition): readonly string[] | undefined {
  return node.kind === 'defect' ? node.classes.map(({ name }) => name.text) : undefined;
}

/** The words for the verdict on a machine. */
export const verdictWords: readonly string[] = ['ready', 'held', 'work-due-first', 'cannot-tell'];

import type { Definition } from '../check/model.js';

/** The words that can be said of a thing, in the order in which it declares them. */
export function wordsOf({ node }: Definition): readonly string[] {
  switch (node.kind) {
    case 'position':
      return node.positions.map(({ name }) => name.text);
    case 'attachment':
      return ['on', 'off'];
    case 'defect':
      return ['open', 'closed', ...node.classes.map(({ name }) => name.text)];
    case 'gauge':
      return node.bands.map(({ name }) => name.text);
    case 'dipstick':
      return ['low', 'full'];
    default:
      return [];
  }
}

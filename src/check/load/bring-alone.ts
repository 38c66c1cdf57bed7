/**
 * A schedule that stands alone in its file.
 */
import type { Span } from '../../base/span.js';
import type { Bring } from './gather.js';

/** The declarations of the file itself. What leads to other files, and what works a variant into its base, is told to `beyond`. */
export function bringAlone(beyond: (at: Span) => void): Bring {
  return (_shelf, headers, { tree }, home) => {
    headers.push(tree.header);
    for (const clause of tree.header.clauses) if (clause.kind === 'use' || clause.kind === 'varies') beyond(clause.at);
    for (const node of tree.declarations) {
      if (node.kind === 'change' || node.kind === 'remove') beyond(node.at);
      if (node.kind === 'attachment' && node.follows !== undefined) beyond(node.follows.at);
    }
    return tree.declarations.map((node) => ({ node, home }));
  };
}

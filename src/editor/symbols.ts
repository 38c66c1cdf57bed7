/**
 * What a file declares, for an outline.
 */
import type { Span } from '../base/span.js';
import type { DeclarationNode, FileNode } from '../syntax/tree.js';

/** A declaration in the outline of a file. */
export interface EditorSymbol {
  readonly name: string;
  /** The title, or whatever explains the name. */
  readonly detail: string;
  readonly kind: DeclarationNode['kind'] | 'header';
  readonly at: Span;
  /** The words to put the cursor on. */
  readonly selection: Span;
}

/** The header and every declaration, in the order written. */
export function symbolsOf(file: FileNode): readonly EditorSymbol[] {
  const { header } = file;
  const first: EditorSymbol = {
    name: header.name.text,
    detail: header.title.text,
    kind: 'header',
    at: header.at,
    selection: header.name.at,
  };
  return [first, ...file.declarations.map(symbolOf)];
}

function symbolOf(node: DeclarationNode): EditorSymbol {
  const named = (name: { readonly text: string; readonly at: Span }, detail: string): EditorSymbol => ({
    name: name.text,
    detail,
    kind: node.kind,
    at: node.at,
    selection: name.at,
  });
  switch (node.kind) {
    case 'rest':
      return { name: `at ${node.which}`, detail: '', kind: node.kind, at: node.at, selection: node.at };
    case 'walk':
      return { name: `${node.from.text} to ${node.to.text}`, detail: '', kind: node.kind, at: node.at, selection: node.from.at };
    case 'never':
    case 'example':
      return named(node.title, '');
    case 'hazard':
      return named(node.name, node.text.text);
    case 'change':
    case 'position':
      return named(node.name, node.title?.text ?? '');
    case 'remove':
      return named(node.name, '');
    default:
      return named(node.name, node.title.text);
  }
}

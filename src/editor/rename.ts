import type { Span } from '../base/span.js';
import { rivalsOf } from '../check/names.js';
import { reservedWords } from '../syntax/words.js';
import { occurrenceAt } from './occurrences.js';
import { referencesTo } from './references-to.js';
import type { EditorView } from './view.js';

/** The edits that give a thing another name everywhere, or why it cannot have it. */
export type Renaming = { readonly edits: readonly { readonly at: Span; readonly text: string }[] } | { readonly refused: string };

const NAME = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;

/** The name at an offset that can be given another; undefined where there is none. */
export function renamableAt(view: EditorView, offset: number): Span | undefined {
  return occurrenceAt(view, offset)?.at;
}

/**
 * Gives what is named at an offset another name, in all files, also where it is part of a name with dots. Logbooks are not changed: what they
 * call by the old name stays as it was written.
 */
export function rename(view: EditorView, offset: number, name: string): Renaming {
  const { model } = view.checked;
  const named = occurrenceAt(view, offset);
  if (model === null || named === undefined) return { refused: 'There is no name here.' };
  if (!NAME.test(name)) return { refused: `\`${name}\` is no name: names are small letters and digits, in words joined by hyphens.` };
  if (reservedWords.has(name)) return { refused: `\`${name}\` is a word of the language and cannot be a name.` };
  const { kind, id, node } = named.definition;
  const wanted = [...id.split('.').slice(0, -1), name].join('.');
  const taken = model.definitions.find((other) => other.node !== node && other.id === wanted && rivalsOf(kind).includes(other.kind));
  if (taken !== undefined) return { refused: `\`${name}\` is already the name of something else.` };
  return { edits: referencesTo(view, offset).map((at) => ({ at, text: name })) };
}

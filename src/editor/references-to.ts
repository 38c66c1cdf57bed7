import type { Span } from '../base/span.js';
import { occurrenceAt, occurrencesIn } from './occurrences.js';
import { distinct, type EditorView } from './view.js';

/** All places, in all files, that name what is named at an offset; `declaration` says whether the one that declares it is among them. */
export function referencesTo(view: EditorView, offset: number, declaration = true): readonly Span[] {
  const { model } = view.checked;
  const named = occurrenceAt(view, offset);
  if (model === null || named === undefined) return [];
  const { at } = named.definition;
  // By the place of the declaration, not by identity: an attachment that is mounted twice is one text.
  const same = occurrencesIn(model).filter(({ definition }) => definition.kind === named.definition.kind && samePlace(definition.at, at));
  return distinct(same.filter(({ declares }) => declaration || !declares).map((each) => each.at));
}

function samePlace(a: Span, b: Span): boolean {
  return a.file === b.file && a.start === b.start;
}

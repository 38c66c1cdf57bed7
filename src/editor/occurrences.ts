/**
 * Where the things of a schedule are named: where they are declared, and where they are used.
 *
 * A name with dots names several things: `flail-mower.rotor` names the attachment by its first part and the meter by its last.
 */
import type { Span } from '../base/span.js';
import type { Definition, Model, Reference } from '../check/model.js';
import { touches, type EditorView } from './view.js';

/** One place that names one thing. */
export interface Occurrence {
  readonly at: Span;
  readonly definition: Definition;
  readonly declares: boolean;
}

/** Every occurrence of everything, in the order of the model. */
export function occurrencesIn(model: Model): readonly Occurrence[] {
  const byId = new Map(model.definitions.flatMap((each) => (each.kind === 'attachment' ? [[each.id, each] as const] : [])));
  return [
    ...model.definitions.map((definition) => ({ at: definition.at, definition, declares: true })),
    ...model.references.flatMap((reference) => occurrencesOf(reference, byId)),
  ];
}

function occurrencesOf({ name, definition }: Reference, attachments: ReadonlyMap<string, Definition>): readonly Occurrence[] {
  if (definition === undefined) return [];
  // What was put right while it was read is not as long as what stands there.
  if (!name.text.includes('.') || name.text.length !== name.at.end - name.at.start) return [{ at: name.at, definition, declares: false }];
  const parts = name.text.split('.');
  const id = definition.id.split('.');
  let { start } = name.at;
  return parts.flatMap((part, index) => {
    const at = { file: name.at.file, start, end: start + part.length };
    start = at.end + 1;
    if (index === parts.length - 1) return [{ at, definition, declares: false }];
    const attachment = attachments.get(id.slice(0, id.length - parts.length + index + 1).join('.'));
    return attachment === undefined ? [] : [{ at, definition: attachment, declares: false }];
  });
}

/** What is named at an offset. */
export function occurrenceAt(view: EditorView, offset: number): Occurrence | undefined {
  const { model } = view.checked;
  return model === null ? undefined : occurrencesIn(model).find(({ at }) => touches(view, at, offset));
}

/** The place where what is named at an offset is declared. */
export function definitionAt(view: EditorView, offset: number): Span | undefined {
  return occurrenceAt(view, offset)?.definition.at;
}

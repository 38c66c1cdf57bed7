/**
 * What an editor asks about: one file of a checked schedule.
 *
 * Offsets are UTF-16 code units from the start of the file, as everywhere; nothing here knows of lines, editors or protocols.
 */
import type { Checked } from '../check/check.js';
import type { Span } from '../base/span.js';

/** One file of a checked schedule, as an editor has it open. */
export interface EditorView {
  readonly checked: Checked;
  /** Index of the file among the sources of the check. */
  readonly file: number;
}

/** The text of the file. */
export function textOf({ checked, file }: EditorView): string {
  return checked.sources[file]?.text ?? '';
}

/** Whether an offset touches a place; the end of a word still belongs to it, for that is where one types. */
export function touches({ file }: EditorView, at: Span, offset: number): boolean {
  return at.file === file && at.start <= offset && offset <= at.end;
}

/** Places in reading order, each once: an attachment that is mounted twice has every place in its file twice. */
export function distinct(places: readonly Span[]): readonly Span[] {
  const found = new Map(places.map((at) => [`${at.file} ${at.start} ${at.end}`, at]));
  return [...found.values()].sort((a, b) => a.file - b.file || a.start - b.start);
}

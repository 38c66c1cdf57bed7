/**
 * The words of the language, edition 1.
 *
 * Reserved words cannot be names: they open declarations and clauses or join them, so that a mistake in one clause never
 * hides the next. Every other word keeps its meaning only where the grammar asks for it and is free as a name elsewhere.
 */

/** Words that open a declaration. */
export const declarationWords = [
  'meter', 'gauge', 'dipstick', 'duty', 'attachment', 'position', 'place', 'walk', 'step', 'never', 'stop', 'supply', 'hazard',
  'event', 'defect', 'task', 'change', 'remove', 'example',
] as const; // prettier-ignore

/** Words that open a clause of a task or a step. */
export const clauseWords = [
  'every', 'first', 'at', 'in', 'while', 'when', 'before', 'after', 'on', 'within', 'sooner', 'only', 'unless', 'for', 'count', 'allow',
  'lead', 'hold', 'takes', 'under', 'with', 'reads', 'uses', 'needs', 'tighten', 'do', 'danger', 'warning', 'caution', 'notice', 'beware',
  'calls', 'covers', 'restarts', 'follows', 'mends', 'met', 'record', 'reason', 'source',
] as const; // prettier-ignore

/** Words that open a clause of a step. */
export const stepWords = [
  'while', 'back', 'one', 'takes', 'at', 'under', 'danger', 'warning', 'caution', 'notice', 'beware', 'calls', 'needs', 'do', 'reason', 'source',
] as const; // prettier-ignore

/** Words that join: operators, edges of bands, and `expect`, which opens a line of a worked example. */
export const joiningWords = ['and', 'or', 'not', 'is', 'of', 'to', 'from', 'above', 'below', 'then', 'expect'] as const;

/** Words with a meaning in some places, and free as names in all others. */
export const softWords = [
  'a', 'again', 'aloft', 'allowance', 'apart', 'as', 'attached', 'attaching', 'back', 'because', 'begins', 'by', 'calendar', 'classes', 'clear',
  'climbs', 'closes', 'coming', 'counting', 'counts', 'date', 'day', 'days', 'detached', 'doing', 'done', 'due', 'each', 'early', 'edition', 'ends', 'enters', 'ever',
  'exists', 'failure', 'fall', 'falls', 'finding', 'fine', 'fits', 'fourth', 'fresh', 'full', 'half', 'half-year', 'half-years', 'happened', 'happens', 'idle', 'if', 'it',
  'kept', 'known', 'language', 'last', 'late', 'least', 'less', 'lesser', 'life', 'look', 'low', 'machine', 'meant', 'mechanic', 'mended', 'missing', 'model', 'month',
  'months', 'more', 'most', 'multiple', 'no', 'now', 'older', 'one', 'opens', 'outing', 'outings', 'overdue', 'part', 'plans', 'plus', 'qualified',
  'quarter', 'quarters', 'read', 'refuelled', 'refuelling', 'rest', 'resting', 'schedule', 'second', 'serial', 'service', 'shift', 'sign', 'since', 'stands', 'states',
  'storage', 'than', 'that', 'the', 'third', 'time', 'times', 'unknown', 'unrecorded', 'until', 'up', 'use', 'variant', 'varies', 'way', 'week', 'where',
  'whichever', 'work', 'worse', 'year', 'years',
] as const; // prettier-ignore

export type DeclarationWord = (typeof declarationWords)[number];
export type ClauseWord = (typeof clauseWords)[number];
export type ReservedWord = DeclarationWord | ClauseWord | (typeof joiningWords)[number];
export type SoftWord = (typeof softWords)[number];

/** Every word that cannot be a name, as docs/ lists them. */
export const reservedWords: ReadonlySet<string> = new Set<string>([...declarationWords, ...clauseWords, ...joiningWords]);

/**
 * What the page asks of its worker, and what the worker tells it: plain data.
 */
import type { Completion } from '../../../editor/complete.js';
import type { Hover } from '../../../editor/hover.js';
import type { AnswerView } from '../view/answer-view.js';
import type { WhyView } from '../view/why-view.js';
import type { Desk, Supposing } from './desk.js';
import type { WalkView } from './walk-view.js';

export type Ask =
  | { readonly ask: 'open'; readonly desk: Desk }
  | { readonly ask: 'edit'; readonly path: string; readonly text: string; readonly edit: number }
  | { readonly ask: 'suppose'; readonly supposing: Supposing }
  /** The task that is looked at; `null` for none. */
  | { readonly ask: 'look'; readonly task: string | null }
  | Inquiry;

/** What the editor wants to know of a place in a file; answered under the same number. */
export interface Inquiry {
  readonly ask: 'complete' | 'hover';
  readonly path: string;
  readonly offset: number;
  readonly number: number;
}

/** One problem in one file, offsets in UTF-16 code units. */
export interface Problem {
  readonly path: string;
  readonly start: number;
  readonly end: number;
  readonly line: number;
  readonly column: number;
  readonly severity: 'error' | 'warning' | 'note';
  readonly code: string;
  readonly message: string;
  readonly help: string;
  readonly fixes: readonly {
    readonly title: string;
    readonly edits: readonly { readonly path: string; readonly start: number; readonly end: number; readonly text: string }[];
  }[];
}

/** What the machine has, for the controls. */
export interface MachineView {
  readonly firstDay: number;
  readonly lastDay: number;
  readonly day: number;
  readonly meters: readonly MeterView[];
  readonly duties: readonly NamedView[];
  readonly attachments: readonly NamedView[];
}

export interface NamedView {
  readonly id: string;
  readonly title: string;
}

export interface MeterView extends NamedView {
  readonly unit: string;
  /** What it showed last by that day; `null` if it was never read. */
  readonly shown: number | null;
  /** What it would show by now at the present rate of use, beyond what is on record; `null` where no rate is known. */
  readonly atRate: number | null;
}

export type Told =
  | { readonly told: 'problems'; readonly problems: readonly Problem[]; readonly edit: number; readonly milliseconds: number }
  | {
      readonly told: 'answer';
      readonly answer: AnswerView;
      readonly machine: MachineView;
      /** The text has errors: the answer is by the last version without. */
      readonly behind: boolean;
      readonly edit: number;
      readonly milliseconds: number;
    }
  /** There is no version without errors yet. */
  | { readonly told: 'no-answer' }
  | { readonly told: 'task'; readonly why: WhyView; readonly drawing: string }
  | { readonly told: 'walk'; readonly walk: WalkView }
  | { readonly told: 'completions'; readonly number: number; readonly completions: readonly Completion[] }
  | { readonly told: 'hover'; readonly number: number; readonly hover: Hover | null };

import type { EntryKind } from '../../../engine.js';

/** What a reading may be: a value in the gauge's unit, a share of a dipstick from low to full, or where it stood. */
export type LooseReading = number | 'below-low' | 'low' | 'full' | 'above-full';

/**
 * What somebody said of an entry so far: its kind and any of its members. Nothing is checked yet; {@link completeDraft} makes a
 * checked draft of it, or says what is missing.
 */
export interface LooseDraft {
  readonly kind: EntryKind;
  readonly on?: string;
  readonly at?: string;
  readonly by?: string;
  readonly note?: string;
  readonly meters?: Readonly<Record<string, number>>;
  readonly readings?: Readonly<Record<string, LooseReading>>;
  readonly tasks?: readonly string[];
  readonly used?: Readonly<Record<string, number>>;
  readonly minutes?: number;
  readonly until?: string;
  readonly hours?: number;
  readonly duties?: readonly { readonly duty: string; readonly hours?: number }[];
  readonly attachments?: readonly string[];
  readonly shift?: string;
  readonly task?: string;
  readonly text?: string;
  readonly defect?: string;
  readonly class?: string;
  readonly event?: string;
  readonly attachment?: string;
  readonly meter?: string;
  readonly final?: number;
  readonly initial?: number;
  readonly phase?: 'begins' | 'ends';
  readonly litres?: number;
  readonly dipstick?: string;
  readonly supply?: string;
  readonly doneBy?: string;
  readonly doneAt?: Readonly<Record<string, number>>;
  readonly words?: string;
  readonly entry?: string;
  readonly model?: string;
  readonly serial?: number;
  readonly inService?: string;
}

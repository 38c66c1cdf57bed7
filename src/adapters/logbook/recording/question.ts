import { assertNever } from '../../../base/assert-never.js';
import type { LooseDraft, LooseReading } from './loose-draft.js';

/** Something that is missing, to be asked of a person. */
export interface Question {
  /** Where the answer goes: `litres`, `meters.engine`, `readings.engine-oil`. */
  readonly slot: string;
  /** One sentence, ending with a question mark. */
  readonly ask: string;
  readonly wants: 'number' | 'text' | 'reading' | 'choice';
  readonly unit?: string;
  /** For a choice: what to answer, and what it means. */
  readonly choices: readonly { readonly value: string; readonly title: string }[];
  /** Without an answer there is no entry. The others may stay open: unknown is then kept as unknown. */
  readonly needed: boolean;
}

/** A draft with the answer in its place, or one sentence on why it does not fit. */
export type Answered = { readonly kind: 'answered'; readonly draft: LooseDraft } | { readonly kind: 'refused'; readonly problem: string };

/** Puts what somebody answered into the draft. */
export function answer(draft: LooseDraft, question: Question, said: string): Answered {
  const value = valueOf(question, said.trim());
  if (value === null) return { kind: 'refused', problem: refusal(question) };
  if (question.slot === 'tasks') return { kind: 'answered', draft: { ...draft, tasks: [String(value)] } };
  const [member, name] = splitSlot(question.slot);
  const held: unknown = Object.entries(draft).find(([key]) => key === member)?.[1];
  const merged = name === undefined ? value : { ...(typeof held === 'object' ? held : {}), [name]: value };
  return { kind: 'answered', draft: { ...draft, [member]: merged } };
}

function splitSlot(slot: string): readonly [string, string?] {
  const dot = slot.indexOf('.');
  return dot < 0 ? [slot] : [slot.slice(0, dot), slot.slice(dot + 1)];
}

function valueOf(question: Question, said: string): string | number | null {
  switch (question.wants) {
    case 'number':
      return parseNumber(question.unit !== undefined && said.endsWith(question.unit) ? said.slice(0, -question.unit.length) : said);
    case 'text':
      return said === '' ? null : said;
    case 'reading':
      return parseReading(said);
    case 'choice':
      return question.choices.find(({ value }) => value === said)?.value ?? null;
    default:
      return assertNever(question.wants);
  }
}

function refusal({ wants, unit, choices }: Question): string {
  switch (wants) {
    case 'number':
      return `Answer with a number${unit === undefined ? '' : ` of ${unit}`}, like 1302.4.`;
    case 'text':
      return 'Answer with a few words.';
    case 'reading':
      return 'Answer with a number, with a share of the range from low to full like 60 % or 3/4, or with low, full, below low or above full.';
    case 'choice':
      return `Answer with one of ${choices.map(({ value }) => value).join(', ')}.`;
    default:
      return assertNever(wants);
  }
}

/** A number of 0 or more as people write it; `null` for anything else. */
export function parseNumber(text: string): number | null {
  return /^\d{1,10}(\.\d+)?$/.test(text.trim()) ? Number(text) : null;
}

/** What a gauge or dipstick read: `95`, `-5`, `60 %`, `3/4`, `half`, `low`, `below low`; `null` for anything else. */
export function parseReading(text: string): LooseReading | null {
  const said = text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s-]+/g, ' ');
  switch (said) {
    case 'low':
    case 'full':
      return said;
    case 'below low':
      return 'below-low';
    case 'above full':
      return 'above-full';
    case 'half':
      return 0.5;
    default:
      return parsePlainReading(text.trim());
  }
}

function parsePlainReading(text: string): number | null {
  const part = /^(\d{1,3})\/([1-9]\d{0,2})$/.exec(text);
  if (part !== null) return Number(part[1]) / Number(part[2]);
  const match = /^(-?\d{1,9}(?:\.\d+)?)\s*(%?)$/.exec(text);
  if (match?.[1] === undefined) return null;
  return match[2] === '%' ? Number(match[1]) / 100 : Number(match[1]);
}

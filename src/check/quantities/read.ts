/**
 * Text read as a value: the value, or what is wrong with the text.
 *
 * The rules report the problem; `compile`, which only sees schedules without errors, takes the value.
 */
import type { Finding } from '../../diagnostics/catalogue-entry.js';
import type { CheckCode } from '../report.js';

export interface CodedProblem extends Finding {
  readonly code: CheckCode;
}

export type Read<T> = { readonly value: T } | { readonly problem: CodedProblem };

/** The value, where there is one. */
export function valueOf<T>(read: Read<T>): T | undefined {
  return 'value' in read ? read.value : undefined;
}

/** The same with the value turned into something else. */
export function mapRead<T, U>(read: Read<T>, change: (value: T) => U): Read<U> {
  return 'value' in read ? { value: change(read.value) } : read;
}

/** A problem by its code. */
export function problem(code: CheckCode, rest: Finding): { readonly problem: CodedProblem } {
  return { problem: { code, ...rest } };
}

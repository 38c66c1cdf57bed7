import { numberText } from '../values/number-text.js';

/** A number with its noun, in the singular for exactly one. @example counted(1, 'day') // '1 day' */
export function counted(count: number, noun: string, plural = `${noun}s`): string {
  return `${numberText(count)} ${count === 1 ? noun : plural}`;
}

/** How often: `once`, `twice`, `4 times`. */
export function timesInWords(times: number): string {
  return times === 1 ? 'once' : times === 2 ? 'twice' : counted(times, 'time');
}

/** A title as it stands inside a sentence: its first letter small, unless the word is an abbreviation or a name of several capitals. */
export function inSentence(title: string): string {
  const [first = '', second = ''] = title;
  return second === '' || second !== second.toUpperCase() || second === ' ' ? first.toLowerCase() + title.slice(first.length) : title;
}

/** A sentence with its full stop, unless a quotation has brought one. */
export function fullStop(text: string): string {
  return /[.!?]”$/.test(text) ? text : `${text}.`;
}

/** The first letter large. */
export function asSentence(text: string): string {
  const [first = ''] = text;
  return first.toUpperCase() + text.slice(first.length);
}

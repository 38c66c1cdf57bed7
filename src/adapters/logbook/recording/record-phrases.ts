/**
 * The small phrases that verbs and clauses of recording share.
 */
import type { RuleGraph } from '../../../engine.js';
import { inUnit } from '../../../values/in-unit.js';
import type { LooseReading } from './loose-draft.js';
import { parseNumber, parseReading } from './question.js';

/** Words as items between commas: `a, b c` → [['a'], ['b', 'c']]. */
export function items(words: readonly string[]): readonly (readonly string[])[] {
  const found: string[][] = [[]];
  for (const word of words) {
    const pieces = word.split(',');
    pieces.forEach((piece, index) => {
      if (index > 0) found.push([]);
      if (piece !== '') found.at(-1)?.push(piece);
    });
  }
  return found.filter((item) => item.length > 0);
}

/** `a, b` as names; `null` if an item is more than one word. */
export function nameList(words: readonly string[]): readonly string[] | null {
  const lists = items(words);
  return lists.every((item) => item.length === 1) ? lists.map(([name = '']) => name) : null;
}

/** `1304`, `1304 h`, `1304 h of shaft`, `shaft 210`: on the first meter of the schedule where none is named. A sentence if not understood. */
export function meterValues(graph: RuleGraph, words: readonly string[]): Readonly<Record<string, number>> | string {
  const values: [string, number][] = [];
  for (const item of items(words)) {
    const text = item.join(' ');
    const match = /^(?:(?<before>[a-z][\w.-]*) )?(?<number>\d[\d.]*)(?: (?<unit>[^\s\d]+))?(?: of (?<after>[a-z][\w.-]*))?$/.exec(
      text,
    )?.groups;
    const value = parseNumber(match?.['number'] ?? '');
    const meter = match?.['before'] ?? match?.['after'] ?? graph.meters.find(({ fromOutings }) => !fromOutings)?.id;
    if (match === undefined || value === null || meter === undefined)
      return `\`${text}\` is not a meter value: say it like \`1302.4\` or \`1302.4 h of engine\`.`;
    const known = graph.meters.find(({ id }) => id === meter)?.unit;
    const counted = known === undefined || match['unit'] === undefined ? value : inUnit(value, match['unit'], known);
    if (counted === null) return `\`${meter}\` counts ${known ?? ''}, not ${match['unit'] ?? ''}.`;
    values.push([meter, counted]);
  }
  const twice = values.find(([meter], index) => values.findIndex(([other]) => other === meter) < index);
  if (twice !== undefined) return `\`${twice[0]}\` stands twice: say one value of it.`;
  return values.length === 0 ? 'A meter value is missing: say it like `1302.4`.' : Object.fromEntries(values);
}

/** `coolant 92`, `coolant 198 °F`, `engine-oil below low`, `engine-oil 3/4`; a unit after the number is one that the gauge's own converts into. */
export function readingValues(graph: RuleGraph, words: readonly string[]): Readonly<Record<string, LooseReading>> | string {
  const values: [string, LooseReading][] = [];
  for (const [instrument = '', ...rest] of items(words)) {
    const value = parseReading(rest.join(' ')) ?? gaugeValue(graph, instrument, rest);
    if (value === null)
      return `\`${[instrument, ...rest].join(' ')}\` is not a reading: say it like \`coolant 92\`, \`engine-oil 3/4\` or \`engine-oil below low\`.`;
    values.push([instrument, value]);
  }
  return values.length === 0 ? 'A reading is missing: say it like `coolant 92`.' : Object.fromEntries(values);
}

/** A number with a unit after it, in the gauge's own. */
function gaugeValue(graph: RuleGraph, instrument: string, [number = '', written, ...more]: readonly string[]): number | null {
  const unit = graph.gauges.find(({ id }) => id === instrument)?.unit;
  const value = parseReading(number);
  if (unit === undefined || written === undefined || more.length > 0 || typeof value !== 'number') return null;
  return inUnit(value, written, unit);
}

/** `6.6 engine-oil-15w40, 1 oil-filter`, with the supply's unit between them, one that converts into it, or none. */
export function usedAmounts(graph: RuleGraph, words: readonly string[]): Readonly<Record<string, number>> | string {
  const values: [string, number][] = [];
  for (const item of items(words)) {
    const [number = '', ...rest] = item;
    const supply = rest.at(-1);
    const amount = parseNumber(number);
    if (amount === null || supply === undefined || rest.length > 2)
      return `\`${item.join(' ')}\` is not an amount of a supply: say it like \`6.6 L engine-oil-15w40\`.`;
    const unit = graph.supplies.find(({ id }) => id === supply)?.unit;
    const counted = rest.length === 2 ? inUnit(amount, rest[0] ?? '', unit ?? 'each') : amount;
    // What the schedule does not have is told with the other names.
    if (counted === null && graph.supplies.some(({ id }) => id === supply))
      return `\`${supply}\` is counted ${unit === undefined ? 'by the piece' : `in ${unit}`}, not in ${rest[0] ?? ''}.`;
    values.push([supply, counted ?? amount]);
  }
  return values.length === 0 ? 'An amount is missing: say it like `6.6 L engine-oil-15w40`.' : Object.fromEntries(values);
}

/** `3 h`, `3h`, `45 min`, `1.5`, in hours; `null` if it is none. */
export function hoursOf(words: readonly string[], bare: 'h' | 'min' = 'h'): number | null {
  const [number = '', unit = bare, ...more] = words.length === 1 ? (words[0] ?? '').split(/(?<=\d)(?=h$|min$)/) : words;
  const value = parseNumber(number);
  if (value === null || more.length > 0 || (unit !== 'h' && unit !== 'min')) return null;
  return unit === 'min' ? value / 60 : value;
}

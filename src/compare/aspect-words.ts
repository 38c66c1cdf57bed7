/**
 * What a task says of one aspect, as a list of phrases: two editions differ in those that only one of them has.
 */
import type { RuleGraph, Task } from '../graph/rule-graph.js';
import { durationText, numberText } from '../values/number-text.js';
import { TICKS_PER_MINUTE } from '../values/ticks.js';
import type { Aspect } from './comparison.js';

/** The aspects that are compared as phrases; the rest is timing. */
export type PhrasedAspect = Exclude<
  Aspect,
  'interval' | 'early allowance' | 'late allowance' | 'lead' | 'hard stop' | 'counting' | 'timing' | 'gate'
>;

type Phrases = (task: Task, graph: RuleGraph) => readonly string[];

const optional = (text: string | undefined): readonly string[] => (text === undefined ? [] : [text]);
const named = (word: string, names: readonly string[]): readonly string[] => names.map((name) => `${word} ${name}`);

/** Each aspect's phrases, in the words of the language where it has them. */
export const phrases: Readonly<Record<PhrasedAspect, Phrases>> = {
  title: (task) => [task.title],
  stance: (task, graph) => (task.stance === undefined ? [] : optional(graph.nodes[task.stance]?.origin.text)),
  readings: (task) => task.reads.flatMap(({ instrument, rules }) => [`reads ${instrument.id}`, ...rules.map(({ origin }) => origin.text)]),
  supplies: (task, graph) => task.uses.map(({ supply, amount }) => suppliedText(graph, supply, amount)),
  torques: (task) => task.torques.map(({ what, written }) => `tighten ${what} to ${written}`),
  work: ({ site }) => [
    ...(site.seconds === 0
      ? []
      : [`takes ${site.seconds % 60 === 0 ? durationText((site.seconds / 60) * TICKS_PER_MINUTE) : `${site.seconds} s`}`]),
    ...(site.place === undefined ? [] : [`at ${site.place}`]),
    ...site.under.map(({ part, meant }) => `under ${part}${meant === undefined ? '' : ` meant “${meant}”`}`),
    ...site.tools.map((tool) => `needs “${tool}”`),
    ...site.procedure.map((text) => `do “${text}”`),
  ],
  cautions: ({ site }) => [
    ...site.cautions.map(({ signal, text }) => `${signal} “${text}”`),
    ...(site.qualified ? ['calls for qualified mechanic'] : []),
  ],
  dependence: (task) => [
    ...named('covers', task.covers),
    ...named('restarts', task.restarts),
    ...named('follows', task.follows),
    ...named('met by', task.metBy),
  ],
  'defects mended': (task) => named('mends', task.mends),
  'serial numbers': ({ serial }) => (serial === undefined ? [] : [`serial ${serial.from} to ${serial.to}`]),
  attachment: (task) => optional(task.attachment),
  reason: (task) => optional(task.reason),
  source: (task) => optional(task.source),
};

/** The phrases that only one of two lists has, in one text; undefined if there are none. Where only their order differs, all of them. */
export function difference(mine: readonly string[], other: readonly string[]): string | undefined {
  const own = mine.filter((phrase) => !other.includes(phrase));
  const sameSet = own.length === 0 && other.every((phrase) => mine.includes(phrase));
  const said = sameSet ? mine : own;
  return said.length === 0 ? undefined : said.join('; ');
}

function suppliedText(graph: RuleGraph, supply: string, amount: number): string {
  const unit = graph.supplies.find(({ id }) => id === supply)?.unit;
  return `uses ${numberText(amount, 4)} ${unit === undefined ? '' : `${unit} `}${supply}`;
}

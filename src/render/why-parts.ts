/**
 * What an explanation says, piece by piece and in words, before it is laid out: the common ground of the text and of a page.
 */
import type { Explanation, RuleFacts, Unknown } from '../explain/explanation.js';
import { findRule } from '../explain/find-rule.js';
import { formatDate } from '../values/civil.js';
import { changeSentences } from './change-sentence.js';
import { asSentence, fullStop } from './count-in-words.js';
import { clockTime } from './dates-in-words.js';
import { doingsSentences } from './doings-sentence.js';
import { aboutOf, entryInWords } from './entry-in-words.js';
import { forecastSentence } from './forecast-sentence.js';
import { headline } from './headline.js';
import { missingSentence, settlingSentence } from './missing-sentence.js';
import type { NumberLine } from './number-lines.js';
import { numberLines } from './number-lines.js';
import { placeInWords } from './place-in-words.js';
import { reasonSentence } from './reason-sentence.js';
import { keptInWords } from './kept-in-words.js';
import { safeText } from './safe-text.js';

/** Every text is one safe line (no control characters, nothing that turns the direction of writing); lists may be empty. */
export interface WhyParts {
  readonly headline: string;
  /** What the other rules that take part have left, one sentence each. */
  readonly others: readonly string[];
  readonly holds: readonly string[];
  /** What would settle it, what would alter the state, and about when limits are reached: whole sentences. */
  readonly changes: readonly string[];
  /** The rule that governs, as its author wrote it, and where. */
  readonly rule: string;
  readonly reason: string | null;
  readonly source: string | null;
  /** How long the record of a doing is kept. */
  readonly kept: string | null;
  readonly numbers: readonly NumberLine[];
  readonly unknown: readonly string[];
  /** Entries of the logbook that it rests on, each with its date and id. */
  readonly entries: readonly string[];
}

/** The words of an explanation. @example whyParts(explain(graph, assessment, entries, 'change-engine-oil')).headline */
export function whyParts(explanation: Explanation): WhyParts {
  const { unknown, names, task } = explanation;
  return {
    headline: headline(explanation),
    others: otherSentences(explanation),
    holds: holdSentences(explanation),
    changes: [...settling(unknown, explanation), ...changeSentences(explanation.changes, names), ...forecastSentence(explanation)],
    rule: ruleWords(explanation),
    reason: task.reason === undefined ? null : `“${safeText(task.reason)}”`,
    source: task.source === undefined ? null : safeText(task.source),
    kept: task.record === undefined ? null : `its record is kept ${keptInWords(task.record)}`,
    numbers: numberLines(explanation),
    unknown: [...new Set(unknown.map(({ missing }) => `${asSentence(missingSentence(missing, names))}.`))],
    entries: entryWords(explanation),
  };
}

/** What the other rules that take part have left, one sentence each. */
function otherSentences(explanation: Explanation): readonly string[] {
  if (explanation.resting !== null) return [];
  const governing = findRule(explanation, explanation.governing);
  const rules = explanation.others.flatMap((id) => findRule(explanation, id) ?? []);
  const said = governing === null ? [] : [fullStop(asSentence(reasonSentence(governing, explanation)))];
  const others = rules
    .filter((rule) => !isSilent(rule) && !isAsUnknownAs(rule, governing))
    .flatMap((rule) => [reasonSentence(rule, explanation), ...doingsSentences(rule, explanation.now)]);
  const besides = governing === null ? [] : doingsSentences(governing, explanation.now);
  return [...new Set([...besides, ...others].map((sentence) => fullStop(asSentence(sentence))))].filter((one) => !said.includes(one));
}

/** A rule that cannot be told for the same reason as the governing one. */
function isAsUnknownAs(rule: RuleFacts, governing: RuleFacts | null): boolean {
  return (
    governing !== null &&
    rule.missing.length > 0 &&
    rule.state === governing.state &&
    JSON.stringify(rule.missing) === JSON.stringify(governing.missing)
  );
}

/** A rule that nothing has set off has nothing to say beside one that speaks. */
function isSilent({ note, limit }: RuleFacts): boolean {
  if (limit !== undefined || note === undefined) return false;
  return note.is === 'not-asked' || note.is === 'no-work' || note.is === 'not-happened' || note.is === 'condition-off';
}

function holdSentences({ holds, notices }: Explanation): readonly string[] {
  const held = holds.map((hold) =>
    hold.truth === 'true'
      ? `The machine is held: “${safeText(hold.text)}”`
      : `It could be a reason to hold the machine, and nobody can tell: “${safeText(hold.text)}”`,
  );
  return [...held, ...notices.map((notice) => `Note: “${safeText(notice.text)}”`)];
}

/** Only what keeps the task from being told; the rest stands among the evidence. */
function settling(unknown: readonly Unknown[], explanation: Explanation): readonly string[] {
  if (explanation.state !== 'unknown' && explanation.state !== 'unrecorded') return [];
  return [...new Set(unknown.map(({ missing }) => settlingSentence(missing, explanation.names)))];
}

function ruleWords(explanation: Explanation): string {
  const governing = findRule(explanation, explanation.governing) ?? (explanation.resting === 'gate' ? explanation.gate : null);
  const place = governing?.place ?? explanation.task.place;
  const words = governing === null || governing === undefined ? '' : `“${safeText(place.text)}” `;
  return `${words}(${placeInWords(place)})`;
}

function entryWords(explanation: Explanation): readonly string[] {
  const { entries, names } = explanation;
  const about = aboutOf(explanation);
  return entries.map(({ id, when, entry, refutes }) => {
    const time = when.minute === null ? '' : ` ${clockTime(when.minute)}`;
    const disputed = refutes === undefined ? '' : `, which [${safeText(refutes)}] disagrees with`;
    return `${formatDate(when.day)}${time} ${entryInWords(entry, names, about)} [${safeText(id)}]${disputed}`;
  });
}

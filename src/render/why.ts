/**
 * Why a task is or is not due, as a mechanic would say it, and below it the numbers, the line of the schedule and the entries of
 * the logbook that it rests on.
 */
import type { Explanation, RuleFacts, Unknown } from '../explain/explanation.js';
import { findRule } from '../explain/find-rule.js';
import { formatDate } from '../values/civil.js';
import { changeSentences } from './change-sentence.js';
import { cautionLines, DEFERENCE } from './cautions.js';
import { asSentence, fullStop } from './count-in-words.js';
import { clockTime } from './dates-in-words.js';
import { aboutOf, entryInWords } from './entry-in-words.js';
import { forecastSentence } from './forecast-sentence.js';
import { headline } from './headline.js';
import { missingSentence, settlingSentence } from './missing-sentence.js';
import { numberLines } from './number-lines.js';
import { placeInWords } from './place-in-words.js';
import { reasonSentence } from './reason-sentence.js';
import { safeText } from './safe-text.js';
import { stateMark } from './state-in-words.js';
import type { Style } from './style.js';
import { labelled, wrap } from './wrap.js';

const MARGIN = 11;

/**
 * The whole answer, lines parted by `\n`, without one at the end.
 *
 * Cautions stand before the procedure, with the deference to the machine's own manual, local rules and qualified mechanics.
 *
 * @example renderWhy(explain(graph, assessment, entries, 'change-engine-oil'), plainStyle(80))
 */
export function renderWhy(explanation: Explanation, style: Style): string {
  const blocks = [
    answer(explanation, style),
    changeBlock(explanation, style),
    evidenceBlock(explanation, style),
    workBlock(explanation, style),
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n');
}

function answer(explanation: Explanation, style: Style): readonly string[] {
  const [first = '', ...rest] = wrap([headline(explanation), ...otherSentences(explanation)].join(' '), style.width - 2);
  const { state } = explanation;
  return [
    style.paint.state(state, stateMark(state, style)) + style.paint.strong(first),
    ...rest.map((line) => `  ${line}`),
    ...holdLines(explanation, style),
  ];
}

/** What the other rules that take part have left, one sentence each. */
function otherSentences(explanation: Explanation): readonly string[] {
  if (explanation.resting !== null) return [];
  const governing = findRule(explanation, explanation.governing);
  const rules = explanation.others.flatMap((id) => findRule(explanation, id) ?? []);
  const said = governing === null ? [] : [fullStop(asSentence(reasonSentence(governing, explanation)))];
  const others = rules
    .filter((rule) => !isSilent(rule) && !isAsUnknownAs(rule, governing))
    .map((rule) => fullStop(asSentence(reasonSentence(rule, explanation))));
  return [...new Set(others)].filter((sentence) => !said.includes(sentence));
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

function holdLines({ holds, notices }: Explanation, style: Style): readonly string[] {
  const held = holds.map((hold) =>
    hold.truth === 'true'
      ? `The machine is held: “${safeText(hold.text)}”`
      : `It could be a reason to hold the machine, and nobody can tell: “${safeText(hold.text)}”`,
  );
  const told = notices.map((notice) => `Note: “${safeText(notice.text)}”`);
  return [...held, ...told].flatMap((line) => wrap(line, style.width - 2).map((part) => `  ${part}`));
}

function changeBlock(explanation: Explanation, style: Style): readonly string[] {
  const { names } = explanation;
  const sentences = [
    ...settling(explanation.unknown, explanation),
    ...changeSentences(explanation.changes, names),
    ...forecastSentence(explanation),
  ];
  return sentences.length === 0 ? [] : wrap(sentences.join(' '), style.width - 2).map((line) => `  ${line}`);
}

/** Only what keeps the task from being told; the rest stands among the evidence. */
function settling(unknown: readonly Unknown[], explanation: Explanation): readonly string[] {
  if (explanation.state !== 'unknown' && explanation.state !== 'unrecorded') return [];
  return [...new Set(unknown.map(({ missing }) => settlingSentence(missing, explanation.names)))];
}

function evidenceBlock(explanation: Explanation, style: Style): readonly string[] {
  return [
    ...ruleLines(explanation, style),
    ...numberLines(explanation).flatMap((line) => row(line.label, line.text, style)),
    ...unknownLines(explanation, style),
    ...entryLines(explanation, style),
  ];
}

function ruleLines(explanation: Explanation, style: Style): readonly string[] {
  const governing = findRule(explanation, explanation.governing) ?? (explanation.resting === 'gate' ? explanation.gate : null);
  const place = governing?.place ?? explanation.task.place;
  const words = governing === null || governing === undefined ? '' : `“${safeText(place.text)}” `;
  const { reason, source } = explanation.task;
  return [
    ...row('Rule', `${words}(${placeInWords(place)})`, style),
    ...(reason === undefined ? [] : row('Reason', `“${safeText(reason)}”`, style)),
    ...(source === undefined ? [] : row('Source', safeText(source), style)),
  ];
}

function unknownLines({ unknown, names }: Explanation, style: Style): readonly string[] {
  const texts = [...new Set(unknown.map(({ missing }) => `${asSentence(missingSentence(missing, names))}.`))];
  return texts.flatMap((text, index) => row(index === 0 ? 'Unknown' : '', text, style));
}

function entryLines(explanation: Explanation, style: Style): readonly string[] {
  const { entries, names } = explanation;
  const about = aboutOf(explanation);
  return entries.flatMap(({ id, when, entry, refutes }, index) => {
    const time = when.minute === null ? '' : ` ${clockTime(when.minute)}`;
    return row(
      index === 0 ? 'Logbook' : '',
      `${formatDate(when.day)}${time} ${entryInWords(entry, names, about)} [${safeText(id)}]${refutes === undefined ? '' : `, which [${safeText(refutes)}] disagrees with`}`,
      style,
    );
  });
}

/** What to do, with what could hurt before it. */
function workBlock({ task, state }: Explanation, style: Style): readonly string[] {
  const wanted = state !== 'clear' && state !== 'resting';
  if (!wanted || (task.cautions.length === 0 && task.procedure.length === 0 && !task.qualified)) return [];
  const steps = task.procedure.flatMap((step, index) => labelled(`${index + 1}.`, safeText(step), style.width, MARGIN));
  const mechanic = task.qualified ? ['This calls for a qualified mechanic.'] : [];
  return [...cautionLines(task.cautions, style, MARGIN), ...[...mechanic, DEFERENCE].flatMap((line) => wrap(line, style.width)), ...steps];
}

function row(label: string, text: string, style: Style): readonly string[] {
  return labelled(label, text, style.width, Math.max(MARGIN, label.length + 1), style.paint.quiet);
}

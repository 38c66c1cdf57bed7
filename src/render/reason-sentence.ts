/**
 * What a rule that is no limit has come to: an occasion, an event, a condition, something that was asked for.
 */
import type { Note, Truth } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import type { Explanation, RuleFacts } from '../explain/explanation.js';
import { nodesOf } from '../explain/find-rule.js';
import type { Condition, Instrument, Trigger } from '../graph/rule-graph.js';
import { numberText } from '../values/number-text.js';
import { happenedInWords, minutesInWords, quoted } from './amounts-in-words.js';
import { conditionInWords, rangeInWords, theInstrument, unitOf, valueInWords } from './condition-in-words.js';
import { listed } from '../base/listed.js';
import { counted } from './count-in-words.js';
import { dayInWords, momentInWords } from './dates-in-words.js';
import { limitSentence } from './limit-sentence.js';
import { missingSentence } from './missing-sentence.js';
import { triggerInWords } from './rule-in-words.js';
import { safeText } from './safe-text.js';
import { windowSentence } from './window-sentence.js';

/** What the rule came to, without a full stop. */
export function reasonSentence(rule: RuleFacts, explanation: Explanation): string {
  const limit = limitSentence(rule, explanation);
  if (limit !== null) return limit;
  if (rule.state === 'unrecorded' || (rule.state === 'unknown' && rule.missing.length > 0)) return cannotSay(rule, explanation);
  const node = rule.node as Trigger;
  switch (node.kind) {
    case 'when':
      return whenSentence(rule, explanation);
    case 'while':
      return whileSentence(rule, explanation);
    default:
      return (
        noteSentence(rule, explanation) ?? `the rule ${triggerInWords(node, nodesOf(explanation), explanation.names)} ${asksNow(rule)}`
      );
  }
}

function asksNow(rule: RuleFacts): string {
  return rule.state === 'due' || rule.state === 'overdue' ? 'asks for it' : 'asks for nothing';
}

function cannotSay(rule: RuleFacts, explanation: Explanation): string {
  const why = listed(rule.missing.map((missing) => missingSentence(missing, explanation.names)));
  const what = triggerInWords((explanation.rule ?? rule).node as Trigger, nodesOf(explanation), explanation.names);
  if (rule.state === 'unrecorded' && rule.node.kind === 'interval' && rule.node.doings !== undefined)
    return `it is on record fewer than ${rule.node.doings} times (the rule is ${what})`;
  if (rule.state !== 'unrecorded') return `nobody can tell, because ${why} (the rule is ${what})`;
  const untold = rule.missing.some((missing) => missing.what === 'in-service')
    ? ', and nobody has noted when the machine entered service'
    : '';
  return `there is no record that it was ever done${untold} (the rule is ${what})`;
}

function noteSentence(rule: RuleFacts, explanation: Explanation): string | null {
  const { note } = rule;
  return note === undefined ? null : noteInWords(note, rule, explanation);
}

function noteInWords(note: Note, rule: RuleFacts, explanation: Explanation): string | null {
  switch (note.is) {
    case 'no-work':
      return `no work is intended, and none has begun${untilNext(rule.node as Trigger)}`;
    case 'work-on':
      return windowSentence(note, rule.state) ?? workOn(note, rule);
    case 'happened':
      return `${happening(rule, explanation)} on ${momentInWords(note.when)}, and ${note.done === null ? 'it has not been done since' : `it was done on ${momentInWords(note.done)}`}`;
    case 'happened-times':
      return happenedTimes(note, happening(rule, explanation));
    case 'not-happened':
      if (note.on !== undefined) return `${happening(rule, explanation).replace(/happened$/, 'comes')} on ${dayInWords(note.on)}`;
      return `${happening(rule, explanation)} never, as far as the logbook says`.replace(
        /(happened|was done|was put on|was refuelled|ended) never/,
        'never $1',
      );
    case 'asked':
      return `${asker(rule, explanation)} on ${momentInWords(note.when)}${note.outcome.text === undefined ? '' : `: “${safeText(note.outcome.text)}”`}`;
    case 'not-asked':
      return 'no reading and no open defect asks for it';
    case 'answered':
      return `it was done on ${momentInWords(note.when)}, and nothing newer asks for it`;
    case 'stages':
      return note.met >= note.of
        ? note.of === 1
          ? 'the first service is behind it'
          : `all ${counted(note.of, 'stage')} are behind it`
        : `${note.met} of ${counted(note.of, 'stage')} are behind it`;
    case 'marks-missed':
      return `${counted(note.count, 'earlier mark')} passed without it; only the latest counts`;
    case 'stood-still':
      return stoodStill(note);
    case 'consumption':
      return `the level falls by ${numberText(note.litresPerHour, 3)} L an hour (by ${counted(note.levels, 'level')} on record), with ${numberText(note.litresLeft)} L above low`;
    case 'condition-off':
      return 'its condition does not hold now';
    case 'reading':
    case 'defect':
    case 'position':
    case 'times-done':
    case 'doings-counted':
      return null;
    default:
      return assertNever(note);
  }
}

/** `“Clean the outer element” was done 3 of 5 times since this work was done on 2 March 2026, the last on 4 May 2026`. */
function happenedTimes({ times, of, when, done }: Extract<Note, { is: 'happened-times' }>, happened: string): string {
  const since = done === null ? '' : ` since this work was done on ${momentInWords(done)}`;
  const last = when === null ? '' : `, ${times === 1 ? '' : 'the last '}on ${momentInWords(when)}`;
  return `${happened} ${times} of ${of} times${since}${last}`;
}

/** What comes before work within some hours has no time of its own until the work has. */
function untilNext(node: Trigger): string {
  if (node.kind !== 'shortly-before') return '';
  return `; it counts for the next if done within ${minutesInWords(node.withinMinutes)} before that begins`;
}

function stoodStill({ days, goesOn }: Extract<Note, { is: 'stood-still' }>): string {
  const stored = goesOn ? 'the machine is in storage' : '';
  const left = days === 0 ? 'so far every day of it counts' : `${counted(days, 'day')} in storage ${days === 1 ? 'does' : 'do'} not count`;
  return stored === '' ? left : `${stored}: ${left}`;
}

function workOn(note: Extract<Note, { is: 'work-on' }>, rule: RuleFacts): string {
  const { node, state } = rule;
  const work = note.intended ? 'work is intended' : 'work has begun';
  if (node.kind === 'occasion' && node.when === 'after') return afterWork(note, state === 'due');
  if (node.kind === 'occasion' && node.when === 'on' && state === 'due' && note.done !== null)
    return `${work}, and it was last done on ${momentInWords(note.done)}, not on this day`;
  const done = note.done === null ? 'there is no record that it was ever done' : `it was last done on ${momentInWords(note.done)}`;
  if (state !== 'due') return `${work}, and ${note.done === null ? 'it is done' : `it was done on ${momentInWords(note.done)}`}`;
  const since = note.lastEnd === null ? '' : `, and the last work before ended on ${momentInWords(note.lastEnd)}`;
  return `${work}, and ${note.done === null || note.lastEnd === null ? `it has not been done for it` : done}${note.done === null ? '' : since}`;
}

function afterWork(note: Extract<Note, { is: 'work-on' }>, isDue: boolean): string {
  const ended = note.lastEnd === null ? 'work has ended' : `work ended on ${momentInWords(note.lastEnd)}`;
  if (isDue) return `${ended}, and it has not been done since`;
  return note.done === null ? ended : `${ended}, and it was done on ${momentInWords(note.done)}`;
}

function happening(rule: RuleFacts, { names }: Explanation): string {
  const node = rule.node as Trigger;
  switch (node.kind) {
    case 'event':
      return happenedInWords(node.event, names);
    case 'stages':
      return node.from.is === 'event' ? happenedInWords(node.from.event, names) : 'it happened';
    case 'attaching':
      return `the ${safeText(names.attachments[node.attachment] ?? node.attachment)} was put on`;
    case 'refuelling':
      return 'the machine was refuelled';
    case 'occasion':
      return node.of === 'storage' ? 'storage ended' : 'work ended';
    default:
      return 'it ended';
  }
}

function asker(rule: RuleFacts, { names }: Explanation): string {
  const node = rule.node as Trigger;
  if (node.kind !== 'asked') return 'it was asked for';
  if (node.by.is === 'reading') return `${quoted(names.tasks[node.by.task], node.by.task)} asked for it by what was read`;
  return `${quoted(names.defects[node.by.defect], node.by.defect)} was found as ${safeText(node.by.class)}`;
}

function whenSentence(rule: RuleFacts, explanation: Explanation): string {
  const [condition] = rule.parts;
  if (condition === undefined) return 'its condition is not on record';
  const evidence = evidenceOf(condition, explanation);
  const read = readingSentence(condition, explanation);
  if (read !== null) return `${read}${rule.note?.is === 'answered' ? `, and it was done on ${momentInWords(rule.note.when)}` : ''}`;
  const said = heldTrue(condition, condition.truth, explanation);
  const answered = rule.note?.is === 'answered' ? `, and it was done on ${momentInWords(rule.note.when)}` : '';
  return `${said}${evidence === '' ? '' : `, ${evidence}`}${answered}`;
}

/** The condition as far as it holds: a negation whose part is so is told by its part. */
function heldTrue({ node, parts }: RuleFacts, truth: Truth | undefined, explanation: Explanation): string {
  const [part] = parts;
  if (node.kind === 'not' && part !== undefined && truth !== 'unknown') return heldTrue(part, opposite(truth), explanation);
  const words = conditionInWords(node as Condition, nodesOf(explanation), explanation.names);
  if (truth === 'true') return words;
  return truth === 'false' ? `it is not so that ${words}` : `nobody can tell whether ${words}`;
}

function opposite(truth: Truth | undefined): Truth | undefined {
  if (truth === 'true') return 'false';
  return truth === 'false' ? 'true' : truth;
}

/** `the coolant temperature gauge read 98 °C on 13 May 2026, which is above 97 °C`; `null` for a condition that is no plain reading. */
function readingSentence(condition: RuleFacts, { names }: Explanation): string | null {
  const { node, note, truth } = condition;
  if (node.kind === 'trend' && truth !== 'unknown') return trendSentence(condition, names);
  if (node.kind !== 'compare' || note?.is !== 'reading') return null;
  const read = `${theInstrument(node.instrument, names)} read ${valueInWords(note.value, node.instrument, names)} on ${momentInWords(note.when)}`;
  return `${read}, which is ${truth === 'true' ? '' : 'not '}${rangeInWords(node.range, node.instrument, names)}`;
}

function trendSentence({ node, note, truth }: RuleFacts, names: Explanation['names']): string | null {
  if (node.kind !== 'trend') return null;
  const by = `${numberText(node.by)}${unitOf(node.instrument, names)} within ${counted(node.withinMinutes, 'minute')}`;
  const instrument = theInstrument(node.instrument, names);
  if (truth !== 'true') return `${instrument} has not ${node.direction === 'climbs' ? 'climbed' : 'fallen'} ${by}`;
  const to = note?.is === 'reading' ? `, to ${valueInWords(note.value, node.instrument, names)} on ${momentInWords(note.when)}` : '';
  return `${instrument} ${node.direction === 'climbs' ? 'climbed' : 'fell'} at least ${by}${to}`;
}

function whileSentence(rule: RuleFacts, explanation: Explanation): string {
  const [condition, then] = rule.parts;
  if (condition === undefined) return 'its condition is not on record';
  const said = `while ${conditionInWords(condition.node as Condition, nodesOf(explanation), explanation.names)}`;
  if (condition.truth === 'true' && then !== undefined) return `${said}, ${reasonSentence(then, explanation)}`;
  return `it counts only ${said}, and ${truthInWords(condition.truth)}${condition.truth === 'unknown' ? '' : ' now'}`;
}

/** A truth as people say it. */
function truthInWords(truth: Truth | undefined): string {
  if (truth === 'true') return 'that is so';
  return truth === 'false' ? 'that is not so' : 'nobody can tell';
}

/** What was read, or found, for each part of a condition that was looked at; without a full stop. */
export function evidenceOf(condition: RuleFacts, explanation: Explanation): string {
  const own = evidence(condition, explanation);
  return [
    ...(own === null ? [] : [own]),
    ...condition.parts.map((part) => evidenceOf(part, explanation)).filter((part) => part !== ''),
  ].join(', ');
}

function evidence(condition: RuleFacts, { names }: Explanation): string | null {
  const { note, node } = condition;
  if (note?.is === 'reading') {
    const instrument = instrumentOf(node as Condition) ?? {
      is: names.meters[note.instrument] === undefined ? 'gauge' : 'meter',
      id: note.instrument,
    };
    return `${theInstrument(instrument, names)} read ${valueInWords(note.value, instrument, names)} on ${momentInWords(note.when)}`;
  }
  if (note?.is === 'defect') return `found on ${momentInWords(note.since)}${note.class === null ? '' : ` as ${safeText(note.class)}`}`;
  if (note?.is === 'position')
    return note.atRest ? `nothing says otherwise than ${safeText(note.position)}` : `it was left ${safeText(note.position)}`;
  if (note?.is === 'happened') return `on ${momentInWords(note.when)}`;
  return condition.missing.length > 0 ? listed(condition.missing.map((missing) => missingSentence(missing, names))) : null;
}

function instrumentOf(node: Condition): Instrument | null {
  if (node.kind === 'compare' || node.kind === 'trend') return node.instrument;
  return node.kind === 'recent' && node.what.is === 'read' && node.within?.on !== 'meter' ? node.what.instrument : null;
}

/**
 * A condition in words: "the coolant temperature gauge reads above 97 °C".
 */
import { assertNever } from '../base/assert-never.js';
import { isCondition } from '../graph/node-references.js';
import type { CompareNode, Condition, DefectIsNode, Instrument, Range, RecentNode } from '../graph/rule-graph.js';
import { numberText } from '../values/number-text.js';
import { unitsOf } from '../values/ticks.js';
import { amountInWords, calendarInWords, quoted, titleOf } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import { counted } from './count-in-words.js';
import { monthDayInWords } from './dates-in-words.js';
import type { NodeById } from './node-by-id.js';
import { safeText } from './safe-text.js';

/** A condition in words; parts in brackets where *and* and *or* meet. */
export function conditionInWords(node: Condition, byId: NodeById, names: Titles): string {
  switch (node.kind) {
    case 'and':
    case 'or':
      return joined(node.parts, ` ${node.kind} `, byId, names);
    case 'not':
      return `it is not so that ${joined([node.part], '', byId, names)}`;
    case 'position-is':
      return `the ${safeText(node.part)} is ${safeText(node.position)}`;
    case 'attachment-is':
      return `the ${safeText(names.attachments[node.attachment] ?? node.attachment)} is ${node.on ? 'on' : 'off'}`;
    case 'defect-is':
      return defectInWords(node, names);
    case 'duty-is':
      return `the work is in ${titleOf(names.duties[node.duty], node.duty)}`;
    case 'compare':
      return compareInWords(node, names);
    case 'trend':
      return `${theInstrument(node.instrument, names)} ${node.direction} ${numberText(node.by)}${unitOf(node.instrument, names)} within ${counted(node.withinMinutes, 'minute')}`;
    case 'recent':
      return recentInWords(node, names);
    case 'age':
      return `the machine is older than ${calendarInWords(node.span)}`;
    case 'idle':
      return `the machine has been idle for ${calendarInWords(node.span)}`;
    case 'unworked':
      return `there was no outing since ${quoted(names.tasks[node.task], node.task)} was done`;
    case 'at-work':
      return 'the machine is at work';
    case 'season':
      return `the date is from ${monthDayInWords(node.from)} to ${monthDayInWords(node.to)}`;
    default:
      return assertNever(node);
  }
}

function joined(parts: readonly number[], joint: string, byId: NodeById, names: Titles): string {
  const words = parts.flatMap((id) => {
    const node = byId(id);
    if (node === undefined || !isCondition(node)) return [];
    const text = conditionInWords(node, byId, names);
    return [node.kind === 'and' || node.kind === 'or' ? `(${text})` : text];
  });
  return words.join(joint);
}

function defectInWords(node: DefectIsNode, names: Titles): string {
  const defect = quoted(names.defects[node.defect], node.defect);
  if (node.worseThan !== undefined) return `${defect} is worse than ${safeText(node.worseThan)}`;
  if (node.class !== undefined) return `${defect} is open as ${safeText(node.class)}`;
  return `${defect} is ${node.open ? 'open' : 'not open'}`;
}

function compareInWords(node: CompareNode, names: Titles): string {
  return `${theInstrument(node.instrument, names)} reads ${rangeInWords(node.range, node.instrument, names)}`;
}

function recentInWords(node: RecentNode, names: Titles): string {
  const often = node.times === undefined ? '' : `${node.times} times `;
  const within = node.within === undefined ? 'at some time' : `${often}within ${amountInWords(node.within, names)}`;
  switch (node.what.is) {
    case 'read':
      return `${theInstrument(node.what.instrument, names)} was read ${within}`;
    case 'done':
      return `${quoted(names.tasks[node.what.task], node.what.task)} was done ${within}`;
    case 'happened':
      return `${quoted(names.events[node.what.event], node.what.event)} happened ${within}`;
    default:
      return assertNever(node.what);
  }
}

/** `the engine oil dipstick`. */
export function theInstrument(instrument: Instrument, names: Titles): string {
  return `the ${titleOf(instrumentTitle(instrument, names), instrument.id)}`;
}

function instrumentTitle(instrument: Instrument, names: Titles): string | undefined {
  switch (instrument.is) {
    case 'gauge':
      return names.gauges[instrument.id]?.title;
    case 'dipstick':
      return names.dipsticks[instrument.id]?.title;
    case 'meter':
      return names.meters[instrument.id]?.title;
    default:
      return assertNever(instrument.is);
  }
}

/** ` °C`, with its space; nothing for a dipstick. */
export function unitOf(instrument: Instrument, names: Titles): string {
  if (instrument.is === 'dipstick') return '';
  const unit = instrument.is === 'gauge' ? names.gauges[instrument.id]?.unit : names.meters[instrument.id]?.unit;
  return unit === undefined ? '' : ` ${safeText(unit)}`;
}

/** A value as the instrument shows it: `97 °C`, `low`, `half way up`, `1300 h`. */
export function valueInWords(value: number, instrument: Instrument, names: Titles): string {
  if (instrument.is === 'dipstick') return levelInWords(value);
  return `${numberText(instrument.is === 'meter' ? unitsOf(value) : value)}${unitOf(instrument, names)}`;
}

function levelInWords(share: number): string {
  if (share === -Infinity) return 'below low';
  if (share === Infinity) return 'above full';
  if (share === 0) return 'low';
  if (share === 1) return 'full';
  if (share < 0) return `${numberText(-share * 100)} % of the range below low`;
  return share > 1
    ? `${numberText((share - 1) * 100)} % of the range above full`
    : `${numberText(share * 100)} % of the way from low to full`;
}

/** `above 97 °C`, `from 75 °C to 90 °C`, `below low`. */
export function rangeInWords(range: Range, instrument: Instrument, names: Titles): string {
  const from = range.from === undefined ? null : valueInWords(range.from, instrument, names);
  const to = range.to === undefined ? null : valueInWords(range.to, instrument, names);
  if (from === null && to === null) return 'anything';
  if (from === null) return `${range.toIncluded ? 'up to' : 'below'} ${to ?? ''}`;
  if (to === null) return `${range.fromIncluded ? 'from' : 'above'} ${from}${range.fromIncluded ? ' up' : ''}`;
  return `${range.fromIncluded ? 'from' : 'above'} ${from} ${range.toIncluded ? 'to' : 'to below'} ${to}`;
}

/**
 * What stands in one row of a list of what is due, and in one reason to hold the machine: the same words in a terminal and on a page.
 */
import type { Hold, Notice, TaskAssessment } from '../assess/assessment.js';
import type { NodeId, RuleGraph } from '../graph/rule-graph.js';
import { lengthInWords, pointInWords } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import { missingSentence } from './missing-sentence.js';
import { nodeInWords } from './rule-in-words.js';
import { safeText } from './safe-text.js';

/** `4 h past`, `now`, `20 h left`; nothing where there is no limit. */
export function leftInWords({ due: point, left: length }: TaskAssessment, names: Titles): string {
  if (point === null || length === null) return '';
  if (length === 0) return 'now';
  return `${lengthInWords(length, point, names)} ${length > 0 ? 'left' : 'past'}`;
}

/** `1300 h of engine`, `good to 30 June 2026`; nothing where there is no limit. */
export function dueInWords({ due: point }: TaskAssessment, names: Titles): string {
  if (point === null) return '';
  return point.on === 'calendar' && point.goodThrough ? `good to ${pointInWords(point, names)}` : pointInWords(point, names);
}

/** The rule that governs, or what is not known. */
export function dueReason(task: TaskAssessment, graph: RuleGraph, names: Titles): string {
  if (task.resting !== null) return restingReason(task, graph, names);
  if (task.state === 'unknown' && task.missing[0] !== undefined) return missingSentence(task.missing[0], names);
  if (task.state === 'unrecorded') return 'no record that it was ever done';
  return task.governing === null ? '' : nodeWords(task.governing, graph, names);
}

function restingReason(task: TaskAssessment, graph: RuleGraph, names: Titles): string {
  if (task.resting === 'attachment-off') return 'its attachment is off';
  if (task.resting === 'serial') return 'for other serial numbers';
  const definition = graph.tasks.find(({ id }) => id === task.task);
  return definition?.gate === undefined ? '' : `only if ${nodeWords(definition.gate, graph, names)}`;
}

function nodeWords(id: NodeId, graph: RuleGraph, names: Titles): string {
  const node = graph.nodes[id];
  return node === undefined ? '' : nodeInWords(node, (other) => graph.nodes[other], names);
}

/** The author's words, where they come from, and what nobody knows of it; a stop's words are its own title. */
export function holdInWords(hold: Hold, names: Titles): string {
  const missing = hold.truth === 'unknown' ? hold.missing.map((each) => missingSentence(each, names)).join(', ') : '';
  // What has not been read names its instrument.
  const source = hold.why.is === 'stop' || (hold.why.is === 'reading' && missing !== '') ? '' : sourceInWords(hold.why, names);
  const aside = [source, missing].filter((each) => each !== '').join(': ');
  return `“${safeText(hold.text)}”${aside === '' ? '' : ` (${aside})`}`;
}

/** What a reading or the class of a defect asks to be borne in mind, and which: `Caution: “Watch the level.” (Seep at a fitting, wetness)`. */
export function noticeInWords({ text, from }: Notice, names: Titles): string {
  return `Caution: “${safeText(text)}” (${sourceInWords(from, names)})`;
}

function sourceInWords(why: Hold['why'] | Notice['from'], names: Titles): string {
  switch (why.is) {
    case 'stop':
      return safeText(why.stop);
    case 'reading':
      return safeText(names.gauges[why.instrument]?.title ?? names.dipsticks[why.instrument]?.title ?? why.instrument);
    case 'defect':
      return `${safeText(names.defects[why.defect] ?? why.defect)}, ${safeText(why.class)}`;
    case 'late':
      return safeText(names.tasks[why.task] ?? why.task);
  }
}

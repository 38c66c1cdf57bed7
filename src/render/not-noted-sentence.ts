import type { Assessment } from '../assess/assessment.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Timeline } from '../history/timeline.js';
import { workNotNoted } from '../history/work-not-noted.js';
import { notBefore } from '../values/moment.js';
import { meterQuantity, theMeter, type Titles } from './amounts-in-words.js';
import { asSentence } from './count-in-words.js';
import { dayInWords } from './dates-in-words.js';

/**
 * That an hour meter shows work which is not on record; empty unless work is on, and a task that comes with it was last done before that other
 * work and is called clear for want of a record of it.
 */
export function notNotedSentence(timeline: Timeline, graph: RuleGraph, { tasks, record }: Assessment, names: Titles): string {
  const work = workNotNoted(timeline, graph);
  if (work === null) return '';
  const isAskedNow = (task: string): boolean => record[task]?.some(({ note }) => note?.is === 'work-on') ?? false;
  const wasBefore = (task: string): boolean => {
    const last = timeline.doings.get(task)?.at(-1);
    return last !== undefined && !notBefore(last.when, work.read);
  };
  if (!tasks.some(({ task, state }) => state === 'clear' && isAskedNow(task) && wasBefore(task))) return '';
  const { meter, since, risen, noted } = work;
  const onRecord = noted === 0 ? 'no work is on record since' : `the work on record since comes to ${meterQuantity(noted, meter, names)}`;
  const rise = `${asSentence(theMeter(meter, names))} has risen by ${meterQuantity(risen, meter, names)} since ${dayInWords(since.day)}`;
  return `${rise}, but ${onRecord}: note outings, for what is asked before and after work goes by them.`;
}

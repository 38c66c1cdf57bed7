import type { RuleGraph } from '../../engine.js';
import { writeCsv } from './csv.js';
import type { RecordedWork, ServiceRecord } from './service-record.js';
import { shownText, timingText, usedText, whenText } from './service-record-words.js';

const COLUMNS = ['date', 'task', 'title', 'meters', 'timing', 'in words', 'used', 'by', 'note', 'edition', 'entry', 'voided by'];

/** The service record as CSV, one row a task done; safe to open in a spreadsheet. */
export function serviceRecordCsv(record: ServiceRecord): string {
  return writeCsv([COLUMNS, ...record.work.map((work) => row(work, graphOf(record, work)))], { mark: true });
}

/** The edition by which a row was judged. */
export function graphOf({ schedules }: ServiceRecord, { when }: RecordedWork): RuleGraph {
  const graph = (schedules.findLast(({ from }) => from === null || from <= when.day) ?? schedules[0])?.graph;
  if (graph === undefined) throw new Error('a service record without a schedule');
  return graph;
}

function row(work: RecordedWork, graph: RuleGraph): readonly string[] {
  return [
    whenText(work.when),
    work.task,
    work.title,
    shownText(work, graph),
    work.timing.is,
    timingText(work.timing, graph),
    usedText(work, graph),
    work.by ?? '',
    work.note ?? '',
    work.edition === null ? '' : String(work.edition),
    work.entry,
    work.voided?.by ?? '',
  ];
}

import type { RuleGraph } from '../../engine.js';
import { writeCsv } from './csv.js';
import { editionOf, type RecordedWork, type ServiceRecord } from './service-record.js';
import { shownText, timingText, usedText, whenText } from './service-record-words.js';

const COLUMNS = ['date', 'task', 'title', 'meters', 'timing', 'in words', 'used', 'by', 'note', 'edition', 'entry', 'voided by', 'kept'];

/** The service record as CSV, one row a task done; safe to open in a spreadsheet. */
export function serviceRecordCsv(record: ServiceRecord): string {
  return writeCsv([COLUMNS, ...record.work.map((work) => row(work, editionOf(record, work)))], { mark: true });
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
    work.kept ?? '',
  ];
}

import { escapeHtml } from '../../render/escape-html.js';
import { numberText } from '../../values/number-text.js';
import { formatDate } from '../../values/civil.js';
import type { ChainHead } from '../logbook/logbook.js';
import { foldRoutine, type RoutineCheck } from './routine-checks.js';
import { editionOf, type RecordedWork, type ServiceRecord } from './service-record.js';
import { shownText, timingText, usedText, whenText } from './service-record-words.js';

// Marks besides words, so that print and colour-blind readers see the same. No script, nothing from outside.
const MARKS: Readonly<Record<RecordedWork['timing']['is'], string>> = {
  'on-time': '✓',
  late: '!',
  'first-on-record': '○',
  'cannot-tell': '?',
  'not-asked-for': '–',
};

const STYLE = `
:root { font: 11pt/1.4 Georgia, "Times New Roman", serif; color: #111; background: #fff; }
body { max-width: 62rem; margin: 2rem auto; padding: 0 1rem; }
h1 { font-size: 1.5rem; margin: 0 0 .25rem; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: .1rem 1rem; margin: 1rem 0; }
dt { font-weight: bold; } dd { margin: 0; }
table { border-collapse: collapse; width: 100%; font-size: .92rem; }
caption { text-align: left; font-weight: bold; padding: .5rem 0; }
th, td { text-align: left; vertical-align: top; padding: .25rem .6rem .25rem 0; border-top: 1px solid #999; }
thead th { border-bottom: 2px solid #111; border-top: 0; }
tr.on td { border-top: 1px dotted #bbb; }
.day { white-space: nowrap; }
td.mark { font-weight: bold; text-align: center; width: 1.4rem; }
.late { font-weight: bold; }
del { color: #444; }
.small { font-size: .82rem; color: #333; overflow-wrap: anywhere; }
footer { margin-top: 1.5rem; border-top: 1px solid #999; padding-top: .5rem; }
@media print { :root { font-size: 9pt; } body { margin: 0; max-width: none; } tr { break-inside: avoid; } thead { display: table-header-group; } @page { margin: 15mm; } }
`;

/**
 * The service record as one HTML page to be printed or sent: complete in itself, without script or anything to load.
 *
 * Every text from outside is escaped. A voided entry is struck out and stays to be read.
 *
 * @param head the end of the logbook's chain, to be printed: whoever has the logbook can check that this is all of it up to there.
 */
export function serviceRecordPage(record: ServiceRecord, head: ChainHead | null = null): string {
  const { lines, checks } = foldRoutine(record);
  const title = `Service record${record.machine.model === null ? '' : ` of ${record.machine.model}`}`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escapeHtml(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<main>
<h1>${escapeHtml(title)}</h1>
${facts(record, head)}
${record.work.length === 0 ? '<p>No work is on record.</p>' : ''}${lines.length === 0 ? '' : table(record, lines)}
${checks.length === 0 ? '' : checkTable(checks)}
</main>
<footer class="small">
<p>✓ on time; ! late; ○ first on record, nothing earlier to count from; ? cannot be told; – not asked for at that time. Struck out: voided later.</p>
<p>“On time” is judged by the schedule named above, from what the owner wrote down. The machine's own manual, local rules and qualified mechanics come before it.</p>
</footer>
</body>
</html>
`;
}

function facts({ machine, schedules, until, work }: ServiceRecord, head: ChainHead | null): string {
  const valid = work.filter(({ voided }) => voided === null);
  const pairs: readonly (readonly [string, string])[] = [
    ...(machine.serial === null ? [] : ([['Serial number', String(machine.serial)]] as const)),
    ['In service since', machine.inService ?? 'not on record'],
    ['Record up to', whenText(until)],
    ...schedules.map(({ graph: { schedule, fingerprint } }): readonly [string, string] => [
      'Judged by',
      `${schedule.title}${schedule.edition === undefined ? '' : `, edition ${schedule.edition.number} of ${schedule.edition.date} by ${schedule.edition.by}`} (fingerprint ${fingerprint.slice(0, 16)})`,
    ]),
    ['Work on record', `${numberText(valid.length)}, of which late: ${valid.filter(({ timing }) => timing.is === 'late').length}`],
    ...(head === null ? [] : ([['End of the logbook', `line ${head.seq}, ${head.hash}`]] as const)),
  ];
  return `<dl class="small">${pairs.map(([name, value]) => `<dt>${escapeHtml(name)}</dt><dd>${escapeHtml(value)}</dd>`).join('\n')}</dl>`;
}

function table(record: ServiceRecord, lines: readonly RecordedWork[]): string {
  const heads = ['Date', 'Meters', 'Work', 'On time?', 'Used', 'By', 'Edition'];
  const cells = heads.map((head) => `<th scope="col">${head}</th>`).join('');
  return `<table>
<caption>Work done, oldest first</caption>
<thead><tr><td></td>${cells}</tr></thead>
<tbody>
${lines.map((work, index) => row(record, work, lines[index - 1]?.entry === work.entry)).join('\n')}
</tbody>
</table>`;
}

/** The checks of each day's work, one line each. */
function checkTable(checks: readonly RoutineCheck[]): string {
  const heads = ['Check', 'Times', 'Days', 'First', 'Last'].map((head) => `<th scope="col">${head}</th>`).join('');
  const rows = checks.map(
    ({ title, times, days, first, last }) =>
      `<tr><td>${escapeHtml(title)}</td><td>${times}</td><td>${days}</td><td>${formatDate(first.day)}</td><td>${formatDate(last.day)}</td></tr>`,
  );
  return `<table>
<caption>Checks that go with the work, summed up; what was late, noted or used stands above, and each by itself in the record as a table (CSV)</caption>
<thead><tr>${heads}</tr></thead>
<tbody>
${rows.join('\n')}
</tbody>
</table>`;
}

/** One thing that was done; `goesOn`: in the same entry as the line before it, whose day, meters, name and note hold for it too. */
function row(record: ServiceRecord, work: RecordedWork, goesOn: boolean): string {
  const graph = editionOf(record, work);
  const strike = (text: string): string => (work.voided === null || text === '' ? escapeHtml(text) : `<del>${escapeHtml(text)}</del>`);
  const timing =
    work.voided === null
      ? escapeHtml(timingText(work.timing, graph))
      : `voided${work.voided.note === null ? '' : `: ${escapeHtml(work.voided.note)}`}`;
  const once = (text: string): string => (goesOn ? '' : strike(text));
  const note = work.note === null || goesOn ? '' : `<br><span class="small">${strike(work.note)}</span>`;
  const kept = work.kept === null ? '' : `<br><span class="small">${strike(`Record kept ${work.kept}`)}</span>`;
  const cells = [
    `<td class="day">${once(whenText(work.when))}</td>`,
    `<td>${once(shownText(work, graph))}</td>`,
    `<td>${strike(work.title)}${note}${kept}</td>`,
    `<td${work.timing.is === 'late' && work.voided === null ? ' class="late"' : ''}>${timing}</td>`,
    `<td>${strike(usedText(work, graph))}</td>`,
    `<td>${once(work.by ?? '')}</td>`,
    `<td>${work.edition ?? ''}</td>`,
  ];
  return `<tr${goesOn ? ' class="on"' : ''}><td class="mark">${work.voided === null ? MARKS[work.timing.is] : ''}</td>${cells.join('')}</tr>`;
}

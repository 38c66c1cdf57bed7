/**
 * What the worked examples of a schedule came to, as its author reads it: every failure with expected and actual side by side.
 */
import type { Missing } from '../assess/assessment.js';
import { namesOf } from '../explain/names.js';
import { assertNever } from '../base/assert-never.js';
import type { ExampleRun, ExamplesReport, ExpectedMachine, ExpectedTask, Expectation } from '../examples/report.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import { formatDate } from '../values/civil.js';
import { counted } from './count-in-words.js';
import { clockTime } from './dates-in-words.js';
import { placeInWords } from './place-in-words.js';
import { holdInWords } from './due-row.js';
import { pointText } from './point-text.js';
import { safeText } from './safe-text.js';
import { stateInWords } from './state-in-words.js';
import type { Style } from './style.js';
import { renderWhy } from './why.js';
import { labelled, pad, wrap } from './wrap.js';

const margin = 10;
/** How much of the work that is due first is named. */
const WORK_LISTED = 5;

/** One line for each example that holds, a paragraph for each expectation that does not, and the count. */
export function renderExamples(report: ExamplesReport, graph: RuleGraph, style: Style): string {
  const blocks = report.examples.map((example) => exampleBlock(example, graph, style));
  const failed = report.examples.filter(({ holds }) => !holds).length;
  const [all, expectations] = [counted(report.examples.length, 'example'), counted(report.expectations, 'expectation')];
  const verdict = failed === 0 ? `${all} with ${expectations}: all hold.` : `${failed} of ${all} ${failed === 1 ? 'does' : 'do'} not hold.`;
  return [...blocks, style.paint.strong(verdict)].join('\n');
}

function exampleBlock(example: ExampleRun, graph: RuleGraph, style: Style): string {
  const title = `${example.holds ? 'holds' : 'FAILS'}  ${safeText(example.title)}`;
  if (example.holds) return title;
  const failures = example.expectations.filter(({ holds }) => !holds);
  return [style.paint.strong(title), ...failures.flatMap((each) => failureLines(each, graph, style)), ''].join('\n');
}

function failureLines(expectation: Expectation, graph: RuleGraph, style: Style): readonly string[] {
  const { about, when, place } = expectation;
  const time = when.minute === null ? '' : ` ${clockTime(when.minute)}`;
  const heads = wrap(`${formatDate(when.day)}${time} ${safeText(place.text)} (${placeInWords(place)})`, style.width - 2).map(
    (line) => `  ${line}`,
  );
  switch (about.kind) {
    case 'task':
      return ['', ...heads, ...taskTable(about, graph, style), ...whyLines(about, style)];
    case 'machine':
      return ['', ...heads, ...machineTable(about, graph, style)];
    default:
      return assertNever(about);
  }
}

function taskTable({ expected, actual, failed }: ExpectedTask, graph: RuleGraph, style: Style): readonly string[] {
  const governing =
    actual.governing === null ? 'nothing' : `${safeText(actual.governing.place.text)} (${placeInWords(actual.governing.place)})`;
  const due = actual.due === null ? 'no point' : pointText(actual.due, graph);
  const missing = actual.missing.map((each) => missingText(each)).join(', ');
  const rows: readonly (readonly [string, string, string, boolean])[] = [
    ['', 'expected', 'actual', false],
    [
      'state',
      stateInWords(expected.state),
      `${stateInWords(actual.state)}${missing === '' ? '' : ` (missing: ${missing})`}`,
      failed.includes('state'),
    ],
    ['because', safeText(expected.because ?? ''), governing, failed.includes('because')],
    ['until', safeText(expected.until.join(' or ')), due, failed.includes('until')],
  ];
  return rows.flatMap(([label, left, right, isWrong]) => sideBySide(label, left, right, isWrong, style));
}

function machineTable({ expected, actual, holds, due = [] }: ExpectedMachine, graph: RuleGraph, style: Style): readonly string[] {
  const names = namesOf(graph);
  const below = (text: string): readonly string[] => labelled('', text, style.width, margin + 4);
  const others = due.length - WORK_LISTED;
  return [
    ...sideBySide('', 'expected', 'actual', false, style),
    ...sideBySide('machine', safeText(expected), actual, true, style),
    ...holds.flatMap((hold) => below(`${hold.truth === 'true' ? 'held' : 'perhaps held'}: ${holdInWords(hold, names)}`)),
    ...due.slice(0, WORK_LISTED).flatMap(({ task, state }) => below(`${stateInWords(state)}: ${safeText(task)}`)),
    ...(others > 0 ? below(`and ${counted(others, 'other', 'others')}`) : []),
  ];
}

/** A row: what failed is marked, so that it is found without colour. */
function sideBySide(label: string, left: string, right: string, isWrong: boolean, style: Style): readonly string[] {
  const room = Math.max(12, Math.floor((style.width - margin - 6) / 2));
  const [lefts, rights] = [wrap(left, room), wrap(right, room)];
  return Array.from({ length: Math.max(lefts.length, rights.length) }, (_, index) => {
    const head = `${isWrong && index === 0 ? '  ! ' : '    '}${pad(index === 0 ? label : '', margin)}`;
    return `${head}${pad(lefts[index] ?? '', room)}  ${rights[index] ?? ''}`.trimEnd();
  });
}

function whyLines({ explanation }: ExpectedTask, style: Style): readonly string[] {
  if (explanation === undefined) return [];
  return [
    '',
    ...renderWhy(explanation, { ...style, width: style.width - 4 })
      .split('\n')
      .map((line) => `    ${line}`.trimEnd()),
  ];
}

function missingText(missing: Missing): string {
  switch (missing.what) {
    case 'reading':
      return `a reading of ${missing.instrument}`;
    case 'meter':
    case 'meter-at-doing':
      return `what ${missing.meter} showed`;
    case 'record':
      return `a record of ${missing.task}`;
    case 'in-service':
      return 'the day on which it went into service';
    case 'outing':
      return 'an outing';
    case 'class':
      return `the class of ${missing.defect}`;
    case 'time-of-day':
      return missing.of === 'doing' ? 'the time of day at which it was done' : 'the time of day at which work begins';
    default:
      return assertNever(missing);
  }
}

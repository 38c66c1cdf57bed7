/**
 * The other ways in and out: what is asked of a hostile text besides what is due.
 */
import { entriesFromCsv, entriesToCsv } from '../../src/adapters/exchange/entries-csv.js';
import { dueCalendar } from '../../src/adapters/exchange/due-calendar.js';
import { readFleetJson, readFleetXml } from '../../src/adapters/exchange/fleet-feed.js';
import { serviceRecordCsv } from '../../src/adapters/exchange/service-record-csv.js';
import { serviceRecordPage } from '../../src/adapters/exchange/service-record-page.js';
import { type ServiceRecord, serviceRecord } from '../../src/adapters/exchange/service-record.js';
import { writeCalendar } from '../../src/adapters/exchange/calendar-file.js';
import { readLogbook } from '../../src/adapters/logbook/read-logbook.js';
import { assess } from '../../src/assess/assess.js';
import { LiveCheck } from '../../src/check/live-check.js';
import { compareEditions } from '../../src/compare/compare-editions.js';
import { compile } from '../../src/compile/compile.js';
import { complete } from '../../src/editor/complete.js';
import { foldsOf } from '../../src/editor/folding.js';
import { hover } from '../../src/editor/hover.js';
import { quickFixes } from '../../src/editor/quick-fixes.js';
import { referencesTo } from '../../src/editor/references-to.js';
import { semanticTokens } from '../../src/editor/semantic-tokens.js';
import { symbolsOf } from '../../src/editor/symbols.js';
import { textOf, type EditorView } from '../../src/editor/view.js';
import { runExamples } from '../../src/examples/run-examples.js';
import { format } from '../../src/format/format.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { renderComparison } from '../../src/render/comparison.js';
import { renderDiagnostics } from '../../src/render/diagnostics.js';
import { renderExamples } from '../../src/render/examples.js';
import { plainStyle } from '../../src/render/style.js';
import { parse } from '../../src/syntax/parse.js';
import { dayNumber } from '../../src/values/civil.js';
import type { Moment } from '../../src/values/moment.js';
import { hostSha256 } from './ask-everything.js';
import { askAll, type Ending, type HostileFiles, type Question } from './question.js';

/** What is done with the files: laid out, edited, compared with `other.due`, proven, brought in, or given out. */
export type Door = 'format' | 'editor' | 'compare' | 'prove' | 'csv' | 'xml' | 'json' | 'out';

const style = plainStyle(100);
const now: Moment = { day: dayNumber({ year: 2026, month: 5, day: 12 }), minute: 450 };

/** Goes through one door. Throws only where the program is at fault. */
export function askDoor(door: Door, hostile: HostileFiles): Ending {
  return askAll(askedAt(door, hostile));
}

/** What is asked there, in the order in which it is. */
export function askedAt(door: Door, hostile: HostileFiles): readonly Question[] {
  if (door === 'editor') return editing(hostile);
  if (door === 'out') return givingOut(hostile);
  return [{ what: door, ask: () => throughDoor(door, hostile) }];
}

function throughDoor(door: Exclude<Door, 'editor' | 'out'>, hostile: HostileFiles): Ending {
  const text = hostile.files?.['schedule.due'] ?? '';
  switch (door) {
    case 'format':
      return formatting(text);
    case 'compare':
      return comparing(hostile);
    case 'prove':
      return proving(hostile);
    case 'csv': {
      const { entries, problems } = entriesFromCsv(text, { sha256: hostSha256 });
      const proof = (): void => {
        const again = entriesFromCsv(entriesToCsv(entries));
        if (again.entries.length !== entries.length) throw new Error('a table does not come back as it went out');
      };
      return { ...answered(problems.map(({ what }) => what).slice(0, 100)), proof };
    }
    case 'xml':
    case 'json': {
      const { problems } = door === 'xml' ? readFleetXml(text) : readFleetJson(text);
      return answered(problems.slice(0, 100));
    }
  }
}

function answered(said: readonly string[], shown = ''): Ending {
  return { kind: said.length > 0 && shown === '' ? 'refused' : 'answered', said, shown };
}

function formatting(text: string): Ending {
  const once = format(text);
  if (!('text' in once)) return answered(once.diagnostics.map(({ code }) => code));
  const proof = (): void => {
    const twice = format(once.text);
    if (!('text' in twice) || twice.text !== once.text) throw new Error('what was laid out is laid out otherwise');
  };
  return { kind: 'answered', said: [], shown: '', proof };
}

function loaderOf({ files = {} }: HostileFiles): (path: string) => string | undefined {
  return (path) => (Object.hasOwn(files, path) ? files[path] : undefined);
}

/** An editor with the text open: a letter is typed in its middle and taken away again. */
class OpenText {
  private readonly live = new LiveCheck();
  private readonly text: string;
  private readonly middle: number;
  private view: EditorView = { checked: { model: null, diagnostics: [], sources: [] }, file: 0 };

  constructor(private readonly hostile: HostileFiles) {
    this.text = loaderOf(hostile)('schedule.due') ?? '';
    this.middle = this.text.indexOf('\n', Math.floor(this.text.length / 2)) + 1;
  }

  open(): Ending {
    return this.show(this.text);
  }

  /** A letter typed, and what could stand there, which an editor offers with each. */
  type(): Ending {
    const shown = this.show(`${this.text.slice(0, this.middle)}x${this.text.slice(this.middle)}`);
    this.ask(complete);
    return shown;
  }

  takeBack(): Ending {
    const shown = this.show(this.text);
    this.ask(complete);
    return shown;
  }

  /** What stands beside the text: its outline, and what can be folded. */
  outline(): Ending {
    const { file } = parse(this.text);
    if (file !== null) {
      foldsOf(file, this.text);
      symbolsOf(file);
    }
    return answered([], 'outline');
  }

  /** Something that is asked of the place where one types. */
  ask(question: (view: EditorView, offset: number) => unknown): Ending {
    question(this.view, this.middle + 1);
    return answered([], 'asked');
  }

  /** What is wrong, and the colours of the words: what an editor shows of itself. */
  private show(typed: string): Ending {
    const load = loaderOf(this.hostile);
    const checked = this.live.check('schedule.due', (path) => (path === 'schedule.due' ? typed : load(path)));
    this.view = { checked, file: 0 };
    semanticTokens(this.view);
    return { kind: 'answered', said: [...new Set(checked.diagnostics.map(({ code }) => code))], shown: '' };
  }
}

/** One after the other, as they are done with one text: opened, asked about, then typed in, then taken back. */
function editing(hostile: HostileFiles): readonly Question[] {
  const editor = new OpenText(hostile);
  const open = (): Ending => editor.open();
  const type = (): Ending => editor.type();
  const asked = (what: string, question: Parameters<OpenText['ask']>[0]): Question => ({
    what,
    before: [open],
    ask: () => editor.ask(question),
  });
  return [
    { what: 'opened', ask: open },
    { what: 'its outline', before: [open], ask: () => editor.outline() },
    asked('what fits there', complete),
    asked('what a word means', (view, offset) => hover(view, offset, null)),
    asked('where a name stands', (view, offset) => referencesTo(view, offset + 5)),
    asked('what puts it right', (view) => quickFixes(view, 0, textOf(view).length)),
    { what: 'a letter typed', before: [open], ask: type },
    { what: 'and taken back', before: [open, type], ask: () => editor.takeBack() },
  ];
}

function comparing({ files = {} }: HostileFiles): Ending {
  const [before, after] = ['schedule.due', 'other.due'].map((path) => compile(path, loaderOf({ files }), { sha256: hostSha256 }).graph);
  if (before === null || before === undefined || after === null || after === undefined) return answered(['no graph']);
  const comparison = compareEditions(before, after, [], undefined, { sha256: hostSha256 });
  return { kind: 'answered', said: [], shown: renderComparison(comparison, { before, after }, style) };
}

function proving(hostile: HostileFiles): Ending {
  const compiled = compile('schedule.due', loaderOf(hostile), { sha256: hostSha256 });
  const report = runExamples(compiled);
  const said = [...new Set(compiled.diagnostics.map(({ code }) => code))];
  if (report === null || compiled.graph === null) return answered(said, renderDiagnostics(compiled.diagnostics, compiled.sources, style));
  return { kind: 'answered', said, shown: renderExamples(report, compiled.graph, style) };
}

function givingOut(hostile: HostileFiles): readonly Question[] {
  const { entries } = readLogbook(hostile.logbook ?? '');
  const given = (what: string, text: (graph: RuleGraph) => string): Question => ({
    what,
    ask: () => {
      const { graph } = compile('schedule.due', loaderOf(hostile), { sha256: hostSha256 });
      return graph === null ? answered(['no graph']) : { kind: 'answered', said: [], shown: text(graph).length.toString() };
    },
  });
  const record = (graph: RuleGraph): ServiceRecord => serviceRecord([{ from: null, graph }], entries, now);
  return [
    given('the entries as a table', () => entriesToCsv(readLogbook(hostile.logbook ?? '').entries)),
    given('the record as a table', (graph) => serviceRecordCsv(record(graph))),
    given('the record as a page', (graph) => serviceRecordPage(record(graph))),
    given('a calendar', (graph) =>
      writeCalendar(dueCalendar(graph, assess(graph, entries, now), 'machine'), { stamp: '2026-05-12T08:30:00Z' }),
    ),
  ];
}

/**
 * The desk, worked on step by step: what is wrong first, then what is due, then what is looked at.
 *
 * Each step is short, and the most urgent one comes first, so that a keystroke never waits for the answer to the one before it.
 */
import {
  type Assessment,
  assess,
  compileChecked,
  type Checked,
  type Entry,
  explain,
  type Intent,
  LiveCheck,
  type Moment,
  type RuleGraph,
  readTimeline,
  stanceOnRecord,
  tasksForWalk,
  type Timeline,
  walkRound,
  namesOf,
} from '../../../index.js';
import { ratesOfUse } from '../../../ahead.js';
import { complete } from '../../../editor/complete.js';
import { hover } from '../../../editor/hover.js';
import { renderRuleGraphHtml } from '../../../render/rule-graph-html.js';
import { apartWords, heldWords } from '../../../render/walk-round/sheet-words.js';
import { dayOf, formatDate } from '../../../values/civil.js';
import type { Day } from '../../../values/moment.js';
import { unitsOf } from '../../../values/ticks.js';
import { readLogbook } from '../../logbook/read-logbook.js';
import { answerView } from '../view/answer-view.js';
import { whyView } from '../view/why-view.js';
import { type Desk, isLogbook, type Supposing, USUAL } from './desk.js';
import { logbookProblems, scheduleProblems } from './problems-of.js';
import type { Ask, Inquiry, MachineView, MeterView, Problem, Told } from './told.js';
import { walkView } from './walk-view.js';

type Step = 'check' | 'inquire' | 'compile' | 'answer' | 'look' | 'walk';
const ORDER: readonly Step[] = ['check', 'inquire', 'compile', 'answer', 'look', 'walk'];

/** What is asked of the machine, and what came of it. */
interface Answered {
  readonly graph: RuleGraph;
  readonly entries: readonly Entry[];
  readonly timeline: Timeline;
  readonly assessment: Assessment;
  readonly rates: ReadonlyMap<string, number>;
}

/** Owns the desk. No clock of its own: `clock` gives milliseconds, to say how long a step took. */
export class Workbench {
  private files = new Map<string, string>();
  private main = '';
  private logbookPath = '';
  private supposing: Supposing = USUAL;
  private task: string | null = null;
  private edit = 0;
  private readonly live = new LiveCheck();
  private checked: Checked | null = null;
  private graph: RuleGraph | null = null;
  private behind = false;
  private logbook: { readonly text: string; readonly entries: readonly Entry[]; readonly problems: readonly Problem[] } | null = null;
  private answered: Answered | null = null;
  private inquiry: Inquiry | null = null;
  private readonly todo = new Set<Step>();
  /** There is a graph already: what is due comes before what is wrong. */
  private atOnce = false;
  private told: { readonly answer: Extract<Told, { told: 'answer' }>; readonly of: readonly unknown[] } | null = null;

  constructor(private readonly clock: () => number) {}

  /** Takes in what is asked; nothing is worked out yet. */
  take(ask: Ask): void {
    switch (ask.ask) {
      case 'open':
        this.open(ask.desk);
        return;
      case 'edit':
        this.files.set(ask.path, ask.text);
        this.edit = ask.edit;
        this.plan(...(isLogbook(ask.path) ? ORDER.filter((step) => step !== 'compile') : ORDER));
        return;
      case 'suppose':
        this.supposing = ask.supposing;
        this.plan('answer', 'look', 'walk');
        return;
      case 'look':
        this.task = ask.task;
        this.plan('look');
        return;
      case 'complete':
      case 'hover':
        // Whoever types or points on no longer waits for what was asked before.
        this.inquiry = ask;
        this.plan('inquire');
        return;
    }
  }

  /** Does the most urgent step; `null` when nothing is left to do. Some steps have nothing to tell. */
  work(): { readonly told: Told | null } | null {
    const step = this.atOnce ? 'answer' : ORDER.find((each) => this.todo.has(each));
    this.atOnce = false;
    if (step === undefined) return null;
    this.todo.delete(step);
    return { told: this.does(step) };
  }

  private plan(...steps: readonly Step[]): void {
    for (const step of steps) this.todo.add(step);
  }

  private open({ files, main, logbook, graph }: Desk): void {
    this.files = new Map(Object.entries(files));
    this.main = main;
    this.logbookPath = logbook;
    this.graph = graph ?? null;
    this.behind = false;
    this.atOnce = graph !== undefined;
    this.plan(...ORDER);
  }

  private does(step: Step): Told | null {
    switch (step) {
      case 'check':
        return this.check();
      case 'inquire':
        return this.inquire();
      case 'compile':
        return this.compile();
      case 'answer':
        return this.answer();
      case 'look':
        return this.look();
      case 'walk':
        return this.walk();
    }
  }

  private check(): Told {
    const begun = this.clock();
    this.checked = this.live.check(this.main, (path) => this.files.get(this.onDesk(path)));
    return this.problems(this.checked.diagnostics, begun);
  }

  private problems(diagnostics: Checked['diagnostics'], begun: number): Told {
    const found = scheduleProblems(diagnostics, this.checked?.sources ?? [], (path) => this.onDesk(path));
    return { told: 'problems', problems: [...found, ...this.readLogbook().problems], edit: this.edit, milliseconds: this.clock() - begun };
  }

  /** Files that were chosen one by one have lost their folders: then the last part of a path is enough. */
  private onDesk(path: string): string {
    if (this.files.has(path)) return path;
    const name = path.split('/').at(-1);
    return [...this.files.keys()].find((each) => each === name) ?? path;
  }

  private inquire(): Told | null {
    const { inquiry, checked, answered, behind } = this;
    if (inquiry === null || checked === null) return null;
    const { ask, path, offset, number } = inquiry;
    const file = checked.sources.findIndex(({ name }) => this.onDesk(name) === path);
    const view = { checked, file };
    if (ask === 'complete') return { told: 'completions', number, completions: file < 0 ? [] : complete(view, offset) };
    const machine = answered === null ? undefined : { entries: answered.entries, now: answered.assessment.now };
    return { told: 'hover', number, hover: file < 0 ? null : (hover(view, offset, behind ? null : this.graph, machine) ?? null) };
  }

  /** What only the whole machine shows, such as a dead end among its stances, is told when it is found. */
  private compile(): Told | null {
    if (this.checked === null) return null;
    const begun = this.clock();
    const compiled = compileChecked(this.checked);
    this.behind = compiled.graph === null;
    this.graph = compiled.graph ?? this.graph;
    const more = compiled.diagnostics.length > this.checked.diagnostics.length;
    return more ? this.problems(compiled.diagnostics, begun) : null;
  }

  private readLogbook(): NonNullable<Workbench['logbook']> {
    const text = this.files.get(this.logbookPath) ?? '';
    if (this.logbook?.text !== text) {
      const { entries, problems } = readLogbook(text);
      this.logbook = { text, entries, problems: logbookProblems(this.logbookPath, text, problems) };
    }
    return this.logbook;
  }

  private answer(): Told {
    const begun = this.clock();
    const { graph } = this;
    if (graph === null) {
      this.answered = null;
      return { told: 'no-answer' };
    }
    const recorded = this.readLogbook().entries;
    const of = [graph, recorded, this.supposing];
    if (this.told?.of.every((each, index) => each === of[index]) === true) {
      // Nothing that it rests on has changed: the text has errors, or only the file of another machine was edited.
      this.todo.delete('walk');
      return { ...this.told.answer, behind: this.behind, edit: this.edit, milliseconds: this.clock() - begun };
    }
    const days = recorded.flatMap(({ on }) => dayOf(on) ?? []);
    const [firstDay, lastDay] = [Math.min(...days), Math.max(...days)];
    const day = this.supposing.day ?? (days.length === 0 ? 0 : lastDay + 2);
    const now: Moment = { day: day as Day, minute: 7 * 60 };
    const asRecorded = readTimeline(recorded, graph, now);
    const entries = [...recorded, ...this.supposedReading(asRecorded, now)];
    const timeline = entries.length === recorded.length ? asRecorded : readTimeline(entries, graph, now);
    const rates = ratesOfUse(asRecorded.meters, now, graph.meters);
    const assessment = assess(graph, entries, now, { intent: this.intent(graph), rates });
    this.answered = { graph, entries, timeline, assessment, rates };
    const machine = {
      firstDay: days.length === 0 ? day : firstDay,
      lastDay: days.length === 0 ? day : lastDay,
      day,
      ...machineOf(graph, asRecorded, rates, now),
    };
    const answer = answerView(graph, assessment);
    this.told = {
      of,
      answer: { told: 'answer', answer, machine, behind: this.behind, edit: this.edit, milliseconds: this.clock() - begun },
    };
    return this.told.answer;
  }

  private intent({ duties, attachments }: RuleGraph): Intent {
    const { works, hours } = this.supposing;
    const known = (ids: readonly string[], things: readonly { readonly id: string }[]): readonly string[] =>
      ids.filter((id) => things.some((thing) => thing.id === id));
    if (!works) return {};
    return { outing: { hours, duties: known(this.supposing.duties, duties), attachments: known(this.supposing.attachments, attachments) } };
  }

  private supposedReading(timeline: Timeline, now: Moment): readonly Entry[] {
    const { meter, more } = this.supposing;
    const shown = meter === null ? undefined : timeline.meters.get(meter)?.points.at(-1)?.shown;
    if (meter === null || shown === undefined || more <= 0) return [];
    const when = { on: formatDate(now.day), at: '07:00', note: 'Supposed, not recorded.' };
    return [
      { kind: 'reading', id: 'supposed', ...when, meters: { [meter]: shown + more } },
      // More than the time since allows would be set aside as a slip of the pen; here it is meant.
      { kind: 'confirm', id: 'supposed-as-meant', ...when, entry: 'supposed' },
    ];
  }

  private look(): Told | null {
    const { task, answered } = this;
    if (task === null || answered === null || !answered.graph.tasks.some(({ id }) => id === task)) return null;
    const { graph, assessment, entries, rates } = answered;
    return { told: 'task', why: whyView(explain(graph, assessment, entries, task, { rates })), drawing: renderRuleGraphHtml(graph, task) };
  }

  private walk(): Told | null {
    if (this.answered === null) return null;
    const { graph, assessment, timeline } = this.answered;
    const chosen = tasksForWalk(graph, assessment);
    const end = this.supposing.works ? 'work' : 'rest';
    const beside = { held: heldWords(assessment, namesOf(graph)), apart: apartWords(chosen, graph) };
    return { told: 'walk', walk: walkView(walkRound(graph, chosen.tasks, { stance: stanceOnRecord(timeline), end }), graph, beside) };
  }
}

function machineOf(
  graph: RuleGraph,
  { meters }: Timeline,
  rates: ReadonlyMap<string, number>,
  now: Moment,
): Pick<MachineView, 'meters' | 'duties' | 'attachments'> {
  const named = (things: readonly { readonly id: string; readonly title: string }[]) => things.map(({ id, title }) => ({ id, title }));
  return {
    meters: graph.meters.map(({ id, title, unit }): MeterView => {
      const last = meters.get(id)?.points.at(-1);
      const rate = rates.get(id);
      const atRate = last === undefined || rate === undefined ? null : unitsOf(rate) * (now.day - last.when.day);
      return { id, title, unit, shown: last?.shown ?? null, atRate };
    }),
    duties: named(graph.duties),
    attachments: named(graph.attachments),
  };
}

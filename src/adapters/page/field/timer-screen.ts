/// <reference lib="dom" />
/**
 * Checks that come round while working: what is due now, what comes next and in how many minutes.
 */
import type { DuringLine } from '../../../engine.js';
import { clockTime } from '../../../render/dates-in-words.js';
import { listed } from '../../../base/listed.js';
import { safeText } from '../../../render/safe-text.js';
import { formatDate } from '../../../values/civil.js';
import { formatTime } from '../../../values/moment.js';
import { cautionList, deference } from '../view/caution-list.js';
import { button, element } from '../view/element.js';
import { startAlarm } from './alarm.js';
import { deviceSeconds } from './device-clock.js';
import type { Field } from './field.js';
import { filled } from './filled.js';
import { meterFields } from './meter-fields.js';
import { lastDials } from './last-dials.js';
import { dueNext, dueSince, minutesIn, outingOf, readRunning, type RunningWork } from './running-work.js';
import type { Screen } from './screen.js';
import { intentOf, planInWords } from './work-plan.js';

const KEPT = 'running';

export function timerScreen(field: Field): Screen {
  const timer = new Timer(field);
  // A second is short enough for a countdown, and nothing is worked out anew unless a check falls due.
  setInterval(() => timer.tick(), 1000);
  return {
    id: 'timer',
    title: 'While working',
    tab: 'Timer',
    body: [deference(), timer.said, timer.alert, timer.body],
    refresh: () => timer.show(),
  };
}

/** Owns what is under way. */
class Timer {
  readonly body = element('div', {});
  readonly said = element('p', { class: 'said', role: 'status' });
  readonly alert = element('div', { class: 'due-now', role: 'alert' });
  private running: RunningWork | null;
  private next: readonly DuringLine[] = [];
  private due: readonly string[] = [];
  private readonly countdown = element('p', { class: 'countdown', role: 'timer' });
  private readonly alarm = startAlarm();

  constructor(private readonly field: Field) {
    this.running = readRunning(field.recall(KEPT));
  }

  show(): void {
    const { running } = this;
    if (running === null) this.alert.replaceChildren();
    else this.workOut(running);
    this.body.replaceChildren(...(running === null ? this.beforeStart() : this.whileRunning(running)));
    this.tick();
  }

  tick(): void {
    const first = this.next[0]?.at;
    if (this.running === null || first?.minute == null) return;
    const now = this.field.now();
    const left = (first.day - now.day) * 86_400 + first.minute * 60 - deviceSeconds();
    this.countdown.textContent = left > 0 ? `${Math.floor(left / 60)}:${String(left % 60).padStart(2, '0')}` : 'now';
    if (left <= 0) this.show();
  }

  private workOut(running: RunningWork): void {
    const { graph, entries } = this.field;
    const now = this.field.now();
    const due = dueSince(running, graph, entries, now);
    if (due.some((task) => !this.due.includes(task))) this.alarm.ring();
    this.due = due;
    this.next = dueNext(running, graph, entries, now);
    this.alert.replaceChildren(...due.map((task) => this.dueItem(task)));
  }

  private dueItem(id: string): HTMLElement {
    const task = this.field.graph.tasks.find((each) => each.id === id);
    const title = safeText(task?.title ?? id);
    return element(
      'div',
      { class: 'due-item' },
      cautionList(task?.site.cautions ?? [], task?.site.qualified),
      element('p', {}, element('strong', {}, 'Due now: '), title),
      button(
        `Done: ${title}`,
        () => {
          const written = this.field.write({ kind: 'done', tasks: [id] });
          this.said.textContent = written.ok ? `Written down: ${title}.` : `Not written down: ${written.problem}.`;
          this.show();
        },
        { class: 'wide main' },
      ),
    );
  }

  private beforeStart(): readonly HTMLElement[] {
    const { plan } = this.field;
    return [
      element(
        'p',
        {},
        plan.works ? `${planInWords(plan, this.field)}. Change it under Due.` : 'No work is intended today. Change it under Due.',
      ),
      element('p', {}, 'Finish what is due before you set off. Stop the machine and make it safe for every check.'),
      button('Start work now', () => this.start(), { class: 'wide main' }),
    ];
  }

  private whileRunning(running: RunningWork): readonly HTMLElement[] {
    const { names } = this.field;
    const [first, ...later] = this.next;
    const title = (line: DuringLine): string => safeText(names.tasks[line.task] ?? line.task);
    const at = (line: DuringLine): string => (line.at?.minute == null ? '' : clockTime(line.at.minute));
    const meters = meterFields(this.field);
    return [
      ...notDone(running, this.field),
      element('p', {}, `At work since ${running.at}, for ${Math.round(minutesIn(running, this.field.now()))} min.`),
      ...(first === undefined
        ? [element('p', { class: 'big' }, 'Nothing more falls due in the time that was intended.')]
        : [
            element('p', { class: 'big' }, `Next, at ${at(first)}: ${title(first)}`),
            this.countdown,
            element('ul', { class: 'later' }, ...later.map((line) => element('li', {}, `${at(line)} ${title(line)}`))),
          ]),
      element(
        'p',
        { class: 'small' },
        'Reckoned with hour meters that run with the clock. Gauges are not foreseen: read them as you work.',
      ),
      element(
        'div',
        { class: 'finish' },
        element('h3', {}, 'When the work is over'),
        meters.root,
        button('Work has ended: write it down', () => this.end(running, meters.values()), { class: 'wide main' }),
      ),
    ];
  }

  private start(): void {
    const { field } = this;
    const now = field.now();
    const { hours, duties, attachments } = field.plan;
    const due = field.assess([], intentOf(field.plan)).tasks.filter(({ state }) => state === 'due' || state === 'overdue');
    this.alarm.wake();
    this.running = {
      on: formatDate(now.day),
      at: formatTime(now.minute ?? 0),
      hours,
      duties,
      attachments,
      dials: lastDials(field.graph, field.entries, now, attachments),
      dueBefore: due.map(({ task }) => task),
    };
    field.remember(KEPT, JSON.stringify(this.running));
    this.said.textContent = 'Started.';
    this.show();
  }

  private end(running: RunningWork, meters: Readonly<Record<string, number>>): void {
    const now = this.field.now();
    const { id: _, ...outing } = outingOf(running);
    const written = this.field.write({
      ...outing,
      until: formatTime(now.minute ?? 0),
      untilOn: formatDate(now.day),
      ...filled('meters', meters),
    });
    if (!written.ok) {
      this.said.textContent = `Not written down: ${written.problem}.`;
      return;
    }
    this.running = null;
    this.next = [];
    this.field.remember(KEPT, null);
    this.said.textContent = 'The work is written down. See under Due what is to be done after it.';
    this.field.changed();
    this.show();
  }
}

/** What was due before the work began and is not written down as done since. */
function notDone({ dueBefore, on, at }: RunningWork, { entries, names }: Field): readonly HTMLElement[] {
  const done = new Set(entries.flatMap((entry) => (entry.kind === 'done' && entry.on === on && (entry.at ?? '') >= at ? entry.tasks : [])));
  const left = dueBefore.filter((task) => !done.has(task)).map((task) => safeText(names.tasks[task] ?? task));
  if (left.length === 0) return [];
  const told = left.length > 4 ? [...left.slice(0, 3), `${left.length - 3} more`] : left;
  return [element('p', { class: 'why-hold' }, `Due before, and not written down as done: ${listed(told)}.`)];
}

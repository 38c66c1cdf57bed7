/**
 * What following 60 tasks along 1,000 simulated futures of two years costs, over what making the futures costs.
 *
 * Processor time, both in one process, the middle of many runs; the compiled rules and the assessment are there beforehand. Two schedules: one of
 * long rounds (each task a few times in the two years) and one as a tractor has them (greasing every 10 h as well as yearly work).
 *
 * Run: `npm run bench:futures`.
 */
import { assessTimeline } from '../../src/assess/assess.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { futuresOf, tasksAhead } from '../../src/outlook/year-ahead.js';
import { addDays } from '../../src/values/calendar.js';
import { dayOf, formatDate } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';
import { compileText } from '../support/compile-text.js';

const TASKS = 60;
const DAYS = 730;
const RUNS = 60;
const now = { day: dayOf('2026-07-20') ?? (0 as Day), minute: null };

/** Rounds of 40 h to 900 h and of 3 to 22 months. */
const long = (index: number): string =>
  `task t${index} "T" every ${40 + 15 * index} h of engine or ${3 + (index % 20)} months, whichever first`;

/** What a tractor's manual asks for, by hours and months; common practice, no source. */
const ROUNDS = ['10 h of engine', '25 h of engine or 1 month', '50 h of engine or 3 months', '100 h of engine or 6 months'];
const MORE = ['250 h of engine or 1 year', '500 h of engine or 2 years', '1 year', '1000 h of engine'];
const mixed = (index: number): string => {
  const rounds = [...ROUNDS, ...MORE];
  const round = rounds[index % rounds.length] ?? '';
  return `task t${index} "T" every ${round}${round.includes(' or ') ? ', whichever first' : ''}`;
};

/** Two and a half hours every five days or so, in bursts, for a year and a half. */
function readings(): readonly Entry[] {
  let hours = 100;
  return Array.from({ length: 110 }, (_, index): Entry => {
    hours += index % 7 < 4 ? 4 : 0.5;
    return {
      kind: 'reading',
      id: `r${String(index).padStart(3, '0')}`,
      on: formatDate(addDays(now.day, -550 + 5 * index)),
      meters: { engine: hours },
    };
  });
}

function cost(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

function ratio(name: string, graph: RuleGraph): void {
  const entries = readings();
  const last = entries.at(-1);
  const hours = last?.kind === 'reading' ? (last.meters?.['engine'] ?? 0) : 0;
  const done: Entry = { kind: 'done', id: 'd', on: formatDate(now.day), tasks: graph.tasks.map(({ id }) => id), meters: { engine: hours } };
  const timeline = readTimeline([...entries, done], graph, now);
  const assessment = assessTimeline(graph, timeline, now);
  const [making, following]: [number[], number[]] = [[], []];
  let rounds = 0;
  for (let run = 0; run < RUNS; run += 1) {
    const options = { days: DAYS, count: 1000, seed: run + 1 };
    let futures = futuresOf(graph, timeline, now.day, { ...options, count: 1 });
    making.push(cost(() => (futures = futuresOf(graph, timeline, now.day, options))));
    let tasks: ReturnType<typeof tasksAhead> = [];
    following.push(cost(() => (tasks = tasksAhead(graph, assessment, futures, addDays(now.day, DAYS)))));
    rounds = tasks.reduce((sum, { next, later }) => sum + (next === null ? 0 : 1) + later.length, 0);
  }
  const [made, followed] = [middle(making.slice(RUNS / 3)), middle(following.slice(RUNS / 3))];
  console.log(
    `${name}: making ${made.toFixed(2)} ms, following ${followed.toFixed(2)} ms (${rounds} rounds of ${graph.tasks.length} tasks): ${(followed / made).toFixed(2)} times`,
  );
}

const schedule = (task: (index: number) => string): RuleGraph =>
  compileText(`meter engine "Hours" counts h\n${Array.from({ length: TASKS }, (_, index) => task(index)).join('\n')}`);

ratio('long rounds', schedule(long));
ratio('as a tractor has them', schedule(mixed));

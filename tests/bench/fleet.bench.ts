/**
 * How fast a fleet is judged: 60 interval rules over many machines, against rule engines that are given the due points, and against a
 * loop written by hand. All in one run, in processor time, each the least of many rounds, because other work on the computer only ever adds.
 *
 * The peers are no dependencies of this project. Install them beside it, bundle, run:
 *
 *   npm install --prefix dist/peers json-rules-engine json-logic-js @marcbachmann/cel-js cel-js
 *   npx esbuild tests/bench/fleet.bench.ts --bundle --platform=node --format=esm --packages=external --outfile=dist/fleet.bench.mjs
 *   PEERS=dist/peers node dist/fleet.bench.mjs
 *
 * The peers are favoured: due hours and due days stand ready in their facts, and they need only say whether a task is due; the fleet
 * says the state out of six, what is left, which limit governs, and each machine's verdict.
 */
import { strictEqual } from 'node:assert/strict';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { compile } from '../../src/compile/compile.js';
import { Fleet } from '../../src/fleet/fleet.js';
import { DUE } from '../../src/fleet/fleet-states.js';
import { planColumns } from '../../src/fleet/plan-columns.js';
import { dayOf, formatDate } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';

const RULES = 60;
const MACHINES = 4000;
const today = dayOf('2026-06-15') ?? 0;

const tasks = Array.from({ length: RULES }, (_, i) => ({ id: `task-${i}`, hours: 50 + ((i * 37) % 450), months: 1 + ((i * 7) % 24) }));
const text = `schedule bench "Bench" language 1 edition 1 of 2026-01-01 by "Bench" fits model "B"
meter engine "Hour meter" counts h
${tasks.map(({ id, hours, months }) => `task ${id} "Task" every ${hours} h of engine or ${months} months, whichever first`).join('\n')}`;
const { graph } = compile('bench.due', (path) => (path === 'bench.due' ? text : undefined));
if (graph === null) throw new Error('the schedule of the benchmark does not compile');

/** The same numbers in every run. */
let seed = 12345;
function random(below: number): number {
  seed = (seed * 1103515245 + 12345) % 2 ** 31;
  return Math.floor((seed / 2 ** 31) * below);
}

interface Machine {
  readonly hours: number;
  readonly done: readonly { readonly day: number; readonly hours: number }[];
}
const machines: readonly Machine[] = Array.from({ length: MACHINES }, () => {
  const rate = 1 + random(60) / 10;
  const hours = 5000 + random(2000) / 10;
  const done = tasks.map(() => {
    const ago = 1 + random(500);
    return { day: today - ago, hours: Math.round((hours - ago * rate) * 10) / 10 };
  });
  return { hours, done };
});
const lines = machines.map(({ hours, done }, m) =>
  JSON.stringify({
    machine: `m-${m}`,
    on: formatDate(today as Day),
    meters: { engine: hours },
    done: Object.fromEntries(done.map(({ day, hours: at }, i) => [tasks[i]?.id, { on: formatDate(day as Day), meters: { engine: at } }])),
  }),
);

/** Seconds of the best round. */
function least(rounds: number, run: () => unknown): number {
  let best = Infinity;
  for (let round = 0; round < rounds; round += 1) {
    const before = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(before);
    best = Math.min(best, (user + system) / 1000);
  }
  return best / 1000;
}
async function leastAsync(rounds: number, run: () => Promise<unknown>): Promise<number> {
  let best = Infinity;
  for (let round = 0; round < rounds; round += 1) {
    const before = process.cpuUsage();
    await run();
    const { user, system } = process.cpuUsage(before);
    best = Math.min(best, (user + system) / 1000);
  }
  return best / 1000;
}

const plan = planColumns(graph);
const fleet = new Fleet(plan, MACHINES);
for (const line of lines) if (!fleet.add(line).ok) throw new Error('a line is refused');
const answer = fleet.assess(today as Day);

// The due points, taken from the ordinary assessor: what the peers and the loop by hand start from.
const dueHours = tasks.map(() => new Float64Array(MACHINES));
const dueDays = tasks.map(() => new Float64Array(MACHINES));
const baseDays = tasks.map(() => new Float64Array(MACHINES));
const now = new Float64Array(MACHINES);
machines.forEach(({ hours, done }, m) => {
  now[m] = Math.round(hours * 36000);
  done.forEach((doing, i) => {
    const date = new Date(doing.day * 86_400_000);
    const months = date.getUTCMonth() + (tasks[i]?.months ?? 0);
    const length = new Date(Date.UTC(date.getUTCFullYear(), months + 1, 0)).getUTCDate();
    const due = Date.UTC(date.getUTCFullYear(), months, Math.min(date.getUTCDate(), length)) / 86_400_000;
    (dueHours[i] as Float64Array)[m] = Math.round(doing.hours * 36000) + (tasks[i]?.hours ?? 0) * 36000;
    (dueDays[i] as Float64Array)[m] = due;
    (baseDays[i] as Float64Array)[m] = doing.day;
  });
});

const leads = plan.tasks.map(({ trigger }) =>
  trigger?.kind === 'group' ? trigger.parts.map((part) => (part.kind === 'limit' ? part.lead : 0)) : [],
);
const hand = {
  state: new Uint8Array(RULES * MACHINES),
  left: new Float64Array(RULES * MACHINES),
  governing: new Int32Array(RULES * MACHINES),
  work: new Uint8Array(MACHINES),
};

/** What somebody would write who has these 60 rules and nothing else to say. */
function byHand(): void {
  hand.work.fill(0);
  for (let i = 0; i < RULES; i += 1) {
    const [hoursDue, daysDue, daysBase] = [dueHours[i] as Float64Array, dueDays[i] as Float64Array, baseDays[i] as Float64Array];
    const span = (tasks[i]?.hours ?? 0) * 36000;
    const [hoursLead, daysLead] = [leads[i]?.[0] ?? 0, leads[i]?.[1] ?? 0];
    const out = i * MACHINES;
    for (let m = 0; m < MACHINES; m += 1) {
      const a = (hoursDue[m] as number) - (now[m] as number);
      const b = (daysDue[m] as number) - today;
      const aIs = a > hoursLead ? 1 : a > 0 ? 2 : a === 0 ? 5 : 6;
      const bIs = b > daysLead ? 1 : b > 0 ? 2 : b === 0 ? 5 : 6;
      const days = (daysDue[m] as number) - (daysBase[m] as number);
      const second = aIs === bIs ? (days - b) / days > (span - a) / span : bIs > aIs;
      const is = second ? bIs : aIs;
      hand.state[out + m] = is;
      hand.left[out + m] = second ? b : a;
      hand.governing[out + m] = second ? 2 * i + 1 : 2 * i;
      if (is >= 4) hand.work[m] = 1;
    }
  }
}

byHand();
for (let i = 0; i < RULES; i += 1)
  for (let m = 0; m < MACHINES; m += 1)
    strictEqual(hand.state[i * MACHINES + m], answer.state[i * answer.stride + m], 'the loop by hand says the same');

const states = RULES * MACHINES;
const [columns, handTime, columnsAgain, handAgain] = [0, 1, 2, 3].map((turn) =>
  least(60, turn % 2 === 0 ? () => fleet.assess(today as Day, answer) : byHand),
) as [number, number, number, number];
const best = Math.min(columns, columnsAgain);
const rate = states / best;
const say = (what: string, figure: string): void => console.log(`${what.padEnd(34)}${figure}`);
say('task states a second, one core', `${(rate / 1e6).toFixed(1)} million`);
say('share of a loop by hand', `${((Math.min(handTime, handAgain) / best) * 100).toFixed(0)} %`);

// As a stream is read: a block of lines at a time, into the same columns.
const block = lines.slice(0, 256);
const columnsOfBlock = new Fleet(plan, block.length);
const answerOfBlock = columnsOfBlock.newStates();
const parse = (): number => block.map((line) => JSON.parse(line) as unknown).length;
const judge = (): unknown => {
  columnsOfBlock.clear();
  for (const line of block) columnsOfBlock.add(line);
  return columnsOfBlock.assess(today as Day, answerOfBlock);
};
const [parsed, verdicts, parsedAgain, verdictsAgain] = [parse, judge, parse, judge].map((run) => least(60, run)) as [
  number,
  number,
  number,
  number,
];
const judged = Math.min(verdicts, verdictsAgain);
say('lines to verdicts / JSON.parse', (judged / Math.min(parsed, parsedAgain)).toFixed(2));
say(
  'lines a second',
  `${Math.round(block.length / judged).toLocaleString('en')} of ${Math.round(block.join('').length / block.length)} characters`,
);

/** Facts of the machines that the peers are tried on. */
const SAMPLE = 200;
const facts = Array.from({ length: SAMPLE }, (_, m) => ({
  hours: now[m] as number,
  today,
  ...Object.fromEntries(
    tasks.flatMap((_task, i) => [
      [`h${i}`, dueHours[i]?.[m] ?? 0],
      [`d${i}`, dueDays[i]?.[m] ?? 0],
    ]),
  ),
}));
const dueCount = Array.from(
  { length: SAMPLE },
  (_, m) => tasks.filter((_task, i) => (answer.state[i * answer.stride + m] ?? 0) >= DUE).length,
).reduce((a, b) => a + b, 0);

async function peer(
  name: string,
  run: (load: (name: string) => Promise<Record<string, unknown>>) => Promise<() => number | Promise<number>>,
): Promise<void> {
  const folder = process.env['PEERS'];
  if (folder === undefined) return;
  const require = createRequire(pathToFileURL(`${resolve(folder)}/package.json`));
  try {
    const judge = await run(async (each) => (await import(pathToFileURL(require.resolve(each)).href)) as Record<string, unknown>);
    strictEqual(await judge(), dueCount, `${name} counts what is due`);
    const time = await leastAsync(8, async () => judge());
    say(
      `times ${name}`,
      `${(rate / ((SAMPLE * RULES) / time)).toFixed(0)}  (${((SAMPLE * RULES) / time / 1000).toFixed(0)} thousand a second)`,
    );
  } catch (error) {
    say(`times ${name}`, `not measured: ${error instanceof Error ? error.message : String(error)}`);
  }
}

interface RuleEngine {
  addRule(rule: object): void;
  run(facts: object): Promise<{ events: readonly unknown[] }>;
}
await peer('json-rules-engine', async (load) => {
  const { Engine } = (await load('json-rules-engine')) as { Engine: new () => RuleEngine };
  const engine = new Engine();
  tasks.forEach(({ id }, i) =>
    engine.addRule({
      conditions: {
        any: [
          { fact: 'hours', operator: 'greaterThanInclusive', value: { fact: `h${i}` } },
          { fact: 'today', operator: 'greaterThanInclusive', value: { fact: `d${i}` } },
        ],
      },
      event: { type: id },
    }),
  );
  return async () => {
    let due = 0;
    for (const each of facts) due += (await engine.run(each)).events.length;
    return due;
  };
});

await peer('json-logic-js', async (load) => {
  const loaded = (await load('json-logic-js')) as { default?: unknown };
  const { apply } = (loaded.default ?? loaded) as { apply: (rule: object, data: object) => unknown };
  const rules = tasks.map((_, i) => ({
    or: [{ '>=': [{ var: 'hours' }, { var: `h${i}` }] }, { '>=': [{ var: 'today' }, { var: `d${i}` }] }],
  }));
  return () => {
    let due = 0;
    for (const each of facts) for (const rule of rules) if (apply(rule, each) === true) due += 1;
    return due;
  };
});

const source = (i: number): string => `hours >= h${i} || today >= d${i}`;
await peer('@marcbachmann/cel-js', async (load) => {
  const { parse } = (await load('@marcbachmann/cel-js')) as { parse: (text: string) => (context: object) => unknown };
  const rules = tasks.map((_, i) => parse(source(i)));
  return () => {
    let due = 0;
    for (const each of facts) for (const rule of rules) if (rule(each) === true) due += 1;
    return due;
  };
});

await peer('cel-js', async (load) => {
  const { parse, evaluate } = (await load('cel-js')) as {
    parse: (text: string) => { cst?: unknown };
    evaluate: (cst: unknown, context: object) => unknown;
  };
  const rules = tasks.map((_, i) => parse(source(i)).cst);
  return () => {
    let due = 0;
    for (const each of facts) for (const rule of rules) if (evaluate(rule, each) === true) due += 1;
    return due;
  };
});

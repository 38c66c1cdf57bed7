/**
 * How fast a fleet is judged: 60 interval rules over many machines, against rule engines that are given the due points, and against a
 * loop written by hand. All in one run, in processor time, each the least of many rounds, because other work on the computer only ever adds.
 *
 * The peers are no dependencies of this project. Install them in a folder of their own, and name it:
 *
 *   npm install --prefix dist/peers json-rules-engine json-logic-js @marcbachmann/cel-js cel-js @bufbuild/cel
 *   PEERS=dist/peers npm run bench:fleet
 *
 * The peers are favoured: due hours and due days stand ready in their facts, rules are read beforehand and, where a peer knows types, with
 * their types, and they need only say whether a task is due; the fleet says the state out of six, what is left, which limit governs, and
 * each machine's verdict. Four of five task states of these machines are due or overdue, so that peers seldom look at the second limit.
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

// What the peers and the loops by hand start from: due points, and for the loops also when each limit was seen to be reached.
const dueHours = tasks.map(() => new Float64Array(MACHINES));
const dueDays = tasks.map(() => new Float64Array(MACHINES));
const baseDays = tasks.map(() => new Float64Array(MACHINES));
const reachedDays = tasks.map(() => new Int32Array(MACHINES));
const now = new Float64Array(MACHINES);
machines.forEach(({ hours, done }, m) => {
  now[m] = Math.round(hours * 36000);
  const readings = [...done.map((each) => ({ ...each, ticks: Math.round(each.hours * 36000) })), { day: today, ticks: now[m] ?? 0 }];
  readings.sort((one, other) => one.day - other.day);
  done.forEach((doing, i) => {
    const date = new Date(doing.day * 86_400_000);
    const months = date.getUTCMonth() + (tasks[i]?.months ?? 0);
    const length = new Date(Date.UTC(date.getUTCFullYear(), months + 1, 0)).getUTCDate();
    const ticks = Math.round(doing.hours * 36000) + (tasks[i]?.hours ?? 0) * 36000;
    (dueHours[i] as Float64Array)[m] = ticks;
    (dueDays[i] as Float64Array)[m] = Date.UTC(date.getUTCFullYear(), months, Math.min(date.getUTCDate(), length)) / 86_400_000;
    (baseDays[i] as Float64Array)[m] = doing.day;
    (reachedDays[i] as Int32Array)[m] = readings.find((reading) => reading.ticks >= ticks)?.day ?? 0;
  });
});

const leads = plan.tasks.map(({ trigger }) =>
  trigger?.kind === 'group' ? trigger.parts.map((part) => (part.kind === 'limit' ? part.lead : 0)) : [],
);
interface Answer {
  readonly state: Uint8Array;
  readonly left: Float64Array;
  readonly governing: Int32Array;
  readonly work: Uint8Array;
}
const newAnswer = (): Answer => ({
  state: new Uint8Array(RULES * MACHINES),
  left: new Float64Array(RULES * MACHINES),
  governing: new Int32Array(RULES * MACHINES),
  work: new Uint8Array(MACHINES),
});
const nodes = plan.tasks.map(({ trigger }) => (trigger?.kind === 'group' ? trigger.parts.map(({ node }) => node) : []));

/** What the loops by hand need of one rule: its columns, its numbers, and where its answers begin. */
const ruleAt = (i: number) => ({
  hoursDue: dueHours[i] as Float64Array,
  daysDue: dueDays[i] as Float64Array,
  daysBase: baseDays[i] as Float64Array,
  reached: reachedDays[i] as Int32Array,
  span: (tasks[i]?.hours ?? 0) * 36000,
  hoursLead: leads[i]?.[0] ?? 0,
  daysLead: leads[i]?.[1] ?? 0,
  hoursNode: nodes[i]?.[0] ?? 0,
  daysNode: nodes[i]?.[1] ?? 0,
  out: i * MACHINES,
});

/** What somebody would write who has these 60 rules and nothing else to say: nothing unknown, no allowance, hours before months. */
function byHand({ state, left, governing, work }: Answer): void {
  work.fill(0);
  for (let i = 0; i < RULES; i += 1) {
    const { hoursDue, daysDue, daysBase, reached, span, hoursLead, daysLead, hoursNode, daysNode, out } = ruleAt(i);
    for (let m = 0; m < MACHINES; m += 1) {
      const a = (hoursDue[m] as number) - (now[m] as number);
      const b = (daysDue[m] as number) - today;
      const aIs = a > hoursLead ? 1 : a > 0 ? 2 : a === 0 ? 5 : 6;
      const bIs = b > daysLead ? 1 : b > 0 ? 2 : b === 0 ? 5 : 6;
      let second = bIs > aIs;
      if (aIs === bIs) {
        const days = (daysDue[m] as number) - (daysBase[m] as number);
        second = aIs >= 5 ? (daysDue[m] as number) < (reached[m] as number) : (days - b) / days > (span - a) / span;
      }
      const is = second ? bIs : aIs;
      state[out + m] = is;
      left[out + m] = second ? b : a;
      governing[out + m] = second ? daysNode : hoursNode;
      if (is >= 5) work[m] = 1;
    }
  }
}

/** The same with every trick that the fleet's own loop knows, and none of what it has to allow for. */
function byHandWithoutBranches({ state, left, governing, work }: Answer): void {
  work.fill(0);
  for (let i = 0; i < RULES; i += 1) {
    const { hoursDue, daysDue, daysBase, reached, span, hoursLead, daysLead, hoursNode, daysNode, out } = ruleAt(i);
    for (let m = 0; m < MACHINES; m += 1) {
      const due = daysDue[m] as number;
      const a = (hoursDue[m] as number) - (now[m] as number);
      const b = due - today;
      const aIs = 1 + Number(a <= hoursLead) + 3 * Number(a <= 0) + Number(a < 0);
      const bIs = 1 + Number(b <= daysLead) + 3 * Number(b <= 0) + Number(b < 0);
      const days = due - (daysBase[m] as number);
      const earlier = Number(due < (reached[m] as number));
      const more = Number(b * span < a * days);
      const second = Number(2 * bIs + (more ^ ((more ^ earlier) & -Number(a <= 0))) > 2 * aIs);
      const is = aIs ^ ((aIs ^ bIs) & -second);
      state[out + m] = is;
      left[out + m] = a + second * (b - a);
      governing[out + m] = hoursNode ^ ((hoursNode ^ daysNode) & -second);
      work[m] = (work[m] as number) | Number(is >= 5);
    }
  }
}

const [hand, handWithout] = [newAnswer(), newAnswer()];
byHand(hand);
byHandWithoutBranches(handWithout);
for (let i = 0; i < RULES; i += 1)
  for (let m = 0; m < MACHINES; m += 1)
    for (const column of ['state', 'left', 'governing'] as const) {
      strictEqual(hand[column][i * MACHINES + m], answer[column][i * answer.stride + m], 'the loop by hand says the same');
      strictEqual(handWithout[column][i * MACHINES + m], answer[column][i * answer.stride + m], 'and so does the other');
    }

const states = RULES * MACHINES;
const judge = (): unknown => fleet.assess(today as Day, answer);
const tried = [judge, (): void => byHand(hand), (): void => byHandWithoutBranches(handWithout)];
const times = [0, 1, 2].flatMap(() => tried.map((run) => least(60, run)));
const bestOf = (which: number): number => Math.min(...times.filter((_, turn) => turn % tried.length === which));
const best = bestOf(0);
const rate = states / best;
const say = (what: string, figure: string): void => console.log(`${what.padEnd(38)}${figure}`);
say('task states a second, one core', `${(rate / 1e6).toFixed(1)} million`);
say('share of a loop by hand', `${((bestOf(1) / best) * 100).toFixed(0)} %  (${(states / bestOf(1) / 1e6).toFixed(1)} million)`);
say('share of one without branches', `${((bestOf(2) / best) * 100).toFixed(0)} %  (${(states / bestOf(2) / 1e6).toFixed(1)} million)`);

// As a stream is read: a block of lines at a time, into the same columns.
const block = lines.slice(0, 256);
const columnsOfBlock = new Fleet(plan, block.length);
const answerOfBlock = columnsOfBlock.newStates();
const parse = (): number => block.map((line) => JSON.parse(line) as unknown).length;
const judgeLines = (): unknown => {
  columnsOfBlock.clear();
  for (const line of block) columnsOfBlock.add(line);
  return columnsOfBlock.assess(today as Day, answerOfBlock);
};
const [parsed, verdicts, parsedAgain, verdictsAgain] = [parse, judgeLines, parse, judgeLines].map((run) => least(60, run)) as [
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
  how: string,
  run: (load: (name: string) => Promise<Record<string, unknown>>) => Promise<() => number | Promise<number>>,
): Promise<void> {
  const folder = process.env['PEERS'];
  if (folder === undefined) return;
  const require = createRequire(pathToFileURL(`${resolve(folder)}/package.json`));
  try {
    const judge = await run(async (each) => (await import(pathToFileURL(require.resolve(each)).href)) as Record<string, unknown>);
    strictEqual(await judge(), dueCount, `${name} counts what is due`);
    const time = await leastAsync(12, async () => judge());
    say(
      `times ${name} ${how}`,
      `${(rate / ((SAMPLE * RULES) / time)).toFixed(1)}  (${((SAMPLE * RULES) / time / 1000).toFixed(0)} thousand a second)`,
    );
  } catch (error) {
    say(`times ${name}`, `not measured: ${error instanceof Error ? error.message : String(error)}`);
  }
}

interface RuleEngine {
  addRule(rule: object): void;
  run(facts: object): Promise<{ events: readonly unknown[] }>;
}
await peer('json-rules-engine', '', async (load) => {
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

await peer('json-logic-js', '', async (load) => {
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
await peer('@marcbachmann/cel-js', '', async (load) => {
  const { parse } = (await load('@marcbachmann/cel-js')) as { parse: (text: string) => (context: object) => unknown };
  const rules = tasks.map((_, i) => parse(source(i)));
  return () => {
    let due = 0;
    for (const each of facts) for (const rule of rules) if (rule(each) === true) due += 1;
    return due;
  };
});

interface CelEnvironment {
  registerVariable(name: string, type: string): CelEnvironment;
  parse(text: string): (context: object) => unknown;
}
await peer('@marcbachmann/cel-js', 'with types', async (load) => {
  const { Environment } = (await load('@marcbachmann/cel-js')) as { Environment: new () => CelEnvironment };
  const environment = Object.keys(facts[0] ?? {}).reduce((all, name) => all.registerVariable(name, 'double'), new Environment());
  const rules = tasks.map((_, i) => environment.parse(source(i)));
  return () => {
    let due = 0;
    for (const each of facts) for (const rule of rules) if (rule(each) === true) due += 1;
    return due;
  };
});

await peer('@bufbuild/cel', '', async (load) => {
  const { celEnv, parse, plan } = (await load('@bufbuild/cel')) as {
    celEnv: () => object;
    parse: (text: string) => object;
    plan: (environment: object, expression: object) => (context: object) => unknown;
  };
  const rules = tasks.map((_, i) => plan(celEnv(), parse(source(i))));
  return () => {
    let due = 0;
    for (const each of facts) for (const rule of rules) if (rule(each) === true) due += 1;
    return due;
  };
});

await peer('cel-js', '', async (load) => {
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

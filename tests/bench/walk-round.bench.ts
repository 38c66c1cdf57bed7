/**
 * How long a proven optimum takes: 20 realistic tasks on the example tractor, and 12 random effective needs over 10 parts, without and
 * with places; and the ratio to HiGHS on machines small enough for an integer program. CPU time, as other work goes on beside it.
 *
 * Run: npx esbuild tests/bench/walk-round.bench.ts --bundle --platform=node --format=esm --packages=external --outfile=node_modules/.cache/walk-round.bench.mjs && node node_modules/.cache/walk-round.bench.mjs
 */
import { readFileSync } from 'node:fs';
import { effectiveNeeds } from '../../src/access/effective-needs.js';
import { walkRound } from '../../src/access/plan-walk-round.js';
import type { AccessProblem, Move, Need } from '../../src/access/problem.js';
import { solve } from '../../src/access/solve.js';
import { compile } from '../../src/compile/compile.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';

type Random = () => number;

/** Mulberry32: small, seeded, good enough to make machines with. */
function seeded(seed: number): Random {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const between = (random: Random, low: number, high: number): number => low + Math.floor(random() * (high - low + 1));

/** Ten parts of two or three positions in a row; each step asks for up to two earlier parts. Needs ask for one to three parts. */
function randomMachine(seed: number, places: number): AccessProblem | null {
  const random = seeded(seed);
  const parts = Array.from({ length: 10 }, () => between(random, 2, 3));
  const full = (): number[] => parts.map((size) => 2 ** size - 1);
  const somewhere = (box: number[], most: number): void => {
    const part = between(random, 0, most);
    box[part] = 1 << between(random, 0, (parts[part] ?? 2) - 1);
  };
  const place = (): number | null => (places === 0 ? null : between(random, 0, places - 1));
  const moves: Move[] = parts.flatMap((size, part) => {
    const where = place();
    return Array.from({ length: size - 1 }, (_, from) => {
      const during = full();
      for (let count = between(random, 0, 2); count > 0 && part > 0; count--) somewhere(during, part - 1);
      const move = { part, from, to: from + 1, during: [during], place: where, seconds: 10 * between(random, 1, 18) };
      return [move, { ...move, from: from + 1, to: from }];
    }).flat();
  });
  const ring = (a: number, b: number): number => 10 * Math.min(Math.abs(a - b), places - Math.abs(a - b));
  const walk = Array.from({ length: places }, (_, a) => Array.from({ length: places }, (__, b) => ring(a, b)));
  const rest = parts.map(() => 0);
  const base = { parts, moves, nevers: [], walk, start: { stance: rest, place: places === 0 ? null : 0 }, goal: rest };
  let needs: Need[] = [];
  for (let tries = 0; needs.length < 12 && tries < 500; tries++) {
    const box = full();
    for (let count = between(random, 1, 3); count > 0; count--) somewhere(box, 9);
    const need = { stance: [box], place: place(), seconds: 60, after: [] };
    const more = [...needs, need];
    if (solve({ ...base, needs: [need] }).kind === 'optimal' && effectiveNeeds({ ...base, needs: more }).length === more.length)
      needs = more;
  }
  return needs.length === 12 ? { ...base, needs } : null;
}

function tractor(): RuleGraph {
  const load = (path: string): string => readFileSync(`schedules/${path}`, 'utf8');
  const { graph } = compile('orchard-tractor.due', load);
  if (graph === null) throw new Error('the example does not compile');
  return graph;
}

function report(name: string, times: readonly number[]): void {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): string => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(2);
  console.log(`${name}: median ${at(0.5)} ms, 95th percentile ${at(0.95)} ms, worst ${at(1)} ms (${times.length} runs)`);
}

/** Processor time, the least of three runs: other work on the machine, and compiling what has just become hot, only ever add to it. */
function timed(run: () => void): number {
  const once = (): number => {
    const before = process.cpuUsage();
    run();
    const spent = process.cpuUsage(before);
    return (spent.user + spent.system) / 1000;
  };
  return Math.min(once(), once(), once());
}

const graph = tractor();
const usable = graph.tasks.filter((task) => task.attachment === undefined).map((task) => task.id);
const draws = Array.from({ length: 300 }, (_, seed) => {
  const random = seeded(seed);
  return [...usable].map((task) => ({ task, key: random() })).sort((a, b) => a.key - b.key).slice(0, 20).map(({ task }) => task); // prettier-ignore
});
for (const tasks of draws.slice(0, 60)) walkRound(graph, tasks);
report('20 tasks of the example tractor, whole answer', draws.map((tasks) => timed(() => void walkRound(graph, tasks)))); // prettier-ignore

for (const places of [0, 5]) {
  const machines = Array.from({ length: places === 0 ? 150 : 40 }, (_, seed) => randomMachine(seed + 1, places)).filter(
    (machine) => machine !== null,
  );
  const outcomes = machines.map((machine) => solve(machine));
  const proven = outcomes.filter(({ kind }) => kind === 'optimal').length;
  const states = outcomes.map(({ expanded }) => expanded).sort((a, b) => a - b);
  const times = machines.map((machine) => timed(() => void solve(machine)));
  report(`12 random needs over 10 parts, ${places} places, ${proven} of ${machines.length} proved`, times);
  console.log(`  states looked at: median ${states[Math.floor(0.5 * (states.length - 1))] ?? 0}, 95th percentile ${states[Math.floor(0.95 * (states.length - 1))] ?? 0}`); // prettier-ignore
}

/**
 * How long reading, checking and compiling a schedule takes, against a parser written by hand that only reads it, in one run.
 *
 * Run: node .scripts/bench.mjs compile
 */
import { readFileSync } from 'node:fs';
import { checkAccess } from '../../src/access/check-access.js';
import { check } from '../../src/check/check.js';
import { compile } from '../../src/compile/compile.js';
import { everyMaker } from '../../src/compile/every-maker.js';
import { graphOf } from '../../src/compile/graph-of.js';
import { parse } from '../../src/syntax/parse.js';
import { parseByHand } from './hand-written.js';

const ROUNDS = 100;
const paths = ['schedules/orchard-tractor.due', 'schedules/wood-chipper.due', 'schedules/irrigation-pump.due'];
const load = (path: string): string => readFileSync(path, 'utf8');

const [clock, busy] = [performance.now(), process.cpuUsage()];
const cold = compile('schedules/orchard-tractor.due', load);
const used = process.cpuUsage(busy);
if (cold.graph === null) throw new Error('the tractor does not compile');
console.log(
  `first compile in the process: ${(performance.now() - clock).toFixed(1)} ms (processor: ${((used.user + used.system) / 1000).toFixed(1)} ms)`,
);

/** Processor time in ms, the least of many rounds: other work on the computer only ever adds. */
function least(run: () => unknown): number {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round += 1) {
    const start = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(start);
    best = Math.min(best, (user + system) / 1000);
  }
  return best;
}

for (const path of paths) {
  const texts = new Map<string, string>();
  const keep = (name: string): string => {
    const text = texts.get(name) ?? load(name);
    texts.set(name, text);
    return text;
  };
  const { graph } = compile(path, keep);
  if (graph === null) throw new Error(`${path} does not compile`);
  const byHand = least(() => [...texts.values()].map(parseByHand));
  const stages = {
    parse: least(() => [...texts.values()].map((text) => parse(text))),
    'parse and check': least(() => check(path, keep)),
    'parse, check and compile': least(() => compile(path, keep)),
    'of that: stances': least(() => checkAccess(graph)),
  };
  const { model, sources } = check(path, keep);
  const making = model === null ? 0 : least(() => graphOf(model, sources, everyMaker));
  const withoutHash = model === null ? 0 : least(() => graphOf(model, sources, everyMaker, () => ''));
  console.log(`${path}: by hand ${byHand.toFixed(2)} ms`);
  for (const [name, time] of [
    ...Object.entries(stages),
    ['of that: the graph', making] as const,
    ['of the graph: hashing', making - withoutHash] as const,
  ])
    console.log(`  ${name.padEnd(26)} ${time.toFixed(2).padStart(7)} ms, ${(time / byHand).toFixed(1)} times`);
}

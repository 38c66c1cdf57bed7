/**
 * How long `parse` takes, against a parser written by hand for the same texts, in one run.
 *
 * Run: npx esbuild tests/bench/parse.bench.ts --bundle --platform=node --format=esm --packages=external --outfile=dist/parse.bench.mjs && node dist/parse.bench.mjs
 */
import { deepStrictEqual } from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { parse } from '../../src/syntax/parse.js';
import { parseByHand } from './hand-written.js';

const paths = ['schedules/orchard-tractor.due', 'schedules/wood-chipper.due', 'schedules/irrigation-pump.due'];
const texts = paths.map((each) => readFileSync(each, 'utf8'));

const [cold, busy] = [performance.now(), process.cpuUsage()];
parse('schedule first "The first text of a process" task look "Look it over" every 100 h of engine');
const used = process.cpuUsage(busy);
console.log(
  `first parse in the process, building included: ${(performance.now() - cold).toFixed(1)} ms (processor: ${((used.user + used.system) / 1000).toFixed(1)} ms)`,
);

for (const text of texts) {
  const { file, diagnostics } = parse(text);
  deepStrictEqual(diagnostics, []);
  deepStrictEqual(JSON.parse(JSON.stringify(file)), JSON.parse(JSON.stringify(parseByHand(text))));
}

/** The least of many rounds: other work on the computer only ever adds. */
function least(run: (text: string) => unknown): number {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 60; round += 1) {
    const start = performance.now();
    for (const text of texts) run(text);
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

const [real, hand, again] = [least(parse), least(parseByHand), least(parse)];
const size = texts.reduce((sum, each) => sum + each.length, 0);
const time = Math.min(real, again);
console.log(
  `parse:           ${time.toFixed(2)} ms for ${(size / 1024).toFixed(0)} KiB (${(size / 1024 / 1024 / (time / 1000)).toFixed(1)} MiB/s)`,
);
console.log(`written by hand: ${hand.toFixed(2)} ms`);
console.log(`ratio:           ${(time / hand).toFixed(2)}`);

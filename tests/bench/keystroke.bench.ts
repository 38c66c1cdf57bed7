/**
 * How long after a keystroke the diagnostics are there, in a schedule of a thousand tasks.
 *
 * Run: npx esbuild tests/bench/keystroke.bench.ts --bundle --platform=node --format=esm --packages=external --outfile=dist/keystroke.bench.mjs && node dist/keystroke.bench.mjs
 */
import { strict } from 'node:assert';
import { check } from '../../src/check/check.js';
import { LiveCheck } from '../../src/check/live-check.js';
import { thousandTasks } from '../editor/thousand-tasks.js';

const PATH = 'long.due';
const text = thousandTasks();

/** Milliseconds of processor time and on the clock that one answer takes, the middle and the worst of many. */
function measure(answers: readonly (() => unknown)[]): string {
  const clock: number[] = [];
  const busy: number[] = [];
  for (const answer of answers) {
    const [start, used] = [performance.now(), process.cpuUsage()];
    answer();
    const { user, system } = process.cpuUsage(used);
    clock.push(performance.now() - start);
    busy.push((user + system) / 1000);
  }
  return `${shown(clock)} on the clock, ${shown(busy)} of the processor`;
}

function shown(times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): string => (sorted[Math.floor((sorted.length - 1) * share)] ?? 0).toFixed(1).padStart(6);
  return `least ${at(0)}, middle ${at(0.5)}, 95 in 100 under ${at(0.95)} ms`;
}

/** Somebody types `typed` at a place, letter by letter, and takes it back. */
function typing(place: number, typed: string): readonly string[] {
  const forth = Array.from(typed, (_, index) => text.slice(0, place) + typed.slice(0, index + 1) + text.slice(place));
  return [...forth, ...[...forth].reverse(), text];
}

function after(words: string): number {
  const at = text.indexOf(words);
  strict.ok(at >= 0, words);
  return at + words.length;
}

const places: readonly (readonly [what: string, texts: readonly string[]])[] = [
  ['in a clause in the middle', typing(after('task task-500 "Work number 500"'), '\n  every 25 h of shaft\n  lead 2 h')],
  ['in a clause of the first task', typing(after('task task-0 "Work number 0"'), '\n  every 25 h of shaft\n  lead 2 h')],
  ['in a title', typing(after('task task-700 "Work number'), ' seven hundred and')],
  ['in the name of a task', typing(after('task task-600'), '-of-spring')],
  ['in a new task before all others', typing(after('takes 1 min at side-1'), '\n\ntask new "New"\n  every 25 h of engine\n')],
  ['in the name of the meter of most tasks', typing(after('meter engine'), '-main')],
  ['in the header', typing(after('language 1'), '\n  edition 2 of 2026-02-03 by "Us"')],
  ['in a worked example', typing(after('expect task-0 clear'), ' until engine 1300 h\n 2026-03-04 expect task-0 clear')],
];

const load = (current: string) => (path: string) => (path === PATH ? current : undefined);
for (let round = 0; round < 5; round += 1) check(PATH, load(text));
console.log(`${(text.length / 1024).toFixed(0)} KiB, 1,000 tasks`);
console.log(`from scratch, every time\n  ${measure(Array.from({ length: 15 }, () => () => check(PATH, load(text))))}`);

const live = new LiveCheck();
live.check(PATH, load(text));
for (const [what, texts] of places) {
  console.log(`${what}\n  ${measure(texts.map((current) => () => live.check(PATH, load(current))))}`);
  strict.deepEqual(live.check(PATH, load(text)).diagnostics, check(PATH, load(text)).diagnostics);
}

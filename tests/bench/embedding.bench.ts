/**
 * What an embedder pays: for the record that explanations are read from, for one explanation, for asking again after an entry. All in one run, in
 * processor time, each the least of many rounds, because other work on the computer only ever adds.
 *
 *   npm run bench:embedding
 *
 * The machine is the orchard tractor with its logbook of two years.
 */
import { readFileSync } from 'node:fs';
import { assess } from '../../src/assess/assess.js';
import { compile } from '../../src/compile/compile.js';
import { explain, explainer, namesFor } from '../../src/explain/explain.js';
import { nearestChanges } from '../../src/explain/nearest-changes.js';
import { type Reasons, reasonsOf } from '../../src/explain/reasons.js';
import { type Run, runsOf } from '../../src/explain/run.js';
import type { Entry } from '../../src/history/entry.js';
import { readEntries } from '../../src/history/read-entries.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { dayOf } from '../../src/values/civil.js';
import { watch } from '../../src/watch/watch.js';

const read = (path: string): string => readFileSync(`schedules/${path}`, 'utf8');
const { graph } = compile('orchard-tractor.due', read);
const day = dayOf('2026-05-08');
if (graph === null || day === null) throw new Error('the tractor does not compile');
const now = { day, minute: 450 };
const lines = read('orchard-tractor.logbook.jsonl')
  .split('\n')
  .filter((line) => line !== '')
  .map((line, index) => JSON.stringify({ id: `line-${index}`, ...(JSON.parse(line) as object) }));
const { entries } = readEntries(lines.join('\n'));

/** Microseconds of processor time for one call: the least of so many rounds of so many calls. */
function least(rounds: number, calls: number, step: () => unknown): number {
  let best = Infinity;
  for (let round = 0; round < rounds; round += 1) {
    const before = process.cpuUsage();
    for (let call = 0; call < calls; call += 1) step();
    const { user, system } = process.cpuUsage(before);
    best = Math.min(best, (user + system) / calls);
  }
  return best;
}

const say = (what: string, figure: string): void => console.log(`${what.padEnd(64)} ${figure}`);
const µs = (time: number): string => `${time.toFixed(1)} µs`;
say('machine', `${graph.tasks.length} tasks, ${graph.nodes.length} nodes, ${entries.length} entries`);

const without = least(15, 20, () => assess(graph, entries, now, { withoutRecord: true }));
const whole = least(15, 20, () => assess(graph, entries, now));
const layout = least(15, 20, () => readTimeline(entries, graph, now));
say('assess without a record', µs(without));
say('assess with its record', `${µs(whole)}, ${(whole / without).toFixed(2)} times that`);
say('of which laying out the history', µs(layout));

const assessment = assess(graph, entries, now);
const why = explainer(graph, assessment, entries);
const runOf = runsOf(graph, assessment, entries);
const ids = graph.tasks.map(({ id }) => id);
// Until everything is compiled as well as it will be.
for (let round = 0; round < 300; round += 1) ids.forEach(why);

/** For each task by itself: the middle of them, and the 95th percentile. */
function ofEach(step: (id: string) => unknown): string {
  const times = ids.map((id) => least(8, 1000, () => step(id))).sort((a, b) => a - b);
  const at = (share: number): string => µs(times[Math.floor(times.length * share)] ?? Number.NaN);
  return `median ${at(0.5)}, 95th percentile ${at(0.95)}`;
}

const told = new Map(ids.map((id) => [id, reasonsOf(runOf(id))]));
const given = (id: string, step: (run: Run, reasons: Reasons) => unknown): unknown => {
  const reasons = told.get(id);
  return reasons === undefined ? null : step(runOf(id), reasons);
};
say('one of several explanations, all of it', ofEach(why));
say(
  '  the reasons: rules, numbers, entries, what is unknown',
  ofEach((id) => reasonsOf(runOf(id))),
);
say(
  '  what would change it',
  ofEach((id) => given(id, nearestChanges)),
);
say(
  '  for its words: titles and units of what is mentioned',
  ofEach((id) => given(id, namesFor)),
);
const all = (): void => ids.forEach(explainer(graph, assessment, entries));
say('the first explanation of each task of an assessment, all found anew', `${µs(least(15, 20, all) / ids.length)} each, of all tasks`);
const alone = least(15, 100, () => explain(graph, assessment, entries, 'change-engine-oil'));
say('one explanation by itself, the history gone through for it', µs(alone));

/** One more reading, on the same morning. */
const reading = (id: number): Entry => ({ kind: 'reading', id: `more-${id}`, on: '2026-05-08', at: '07:00', readings: { coolant: 80 } });
const watched = watch(graph, entries, now);
let added = 0;
const again = least(15, 10, () => {
  added += 1;
  return watched.add(reading(added));
});
say('asking again after one reading of a gauge', `${µs(again)}, ${(whole / again).toFixed(1)} times quicker than a full assessment`);
let minute = now.minute;
const later = least(15, 10, () => {
  minute = minute >= 1400 ? now.minute : minute + 1;
  return watched.at({ day, minute });
});
say('asking again a minute later', `${µs(later)}, ${(whole / later).toFixed(1)} times quicker`);

/**
 * One question of one case in a process of its own: says how it ended, and what it took beyond starting up and what was asked before it: the first
 * time, and once more when the code has run before. `node measure-case.mjs INDEX [QUESTION]`; without a question, all of them at once.
 */
import { askEverything, commandsOn } from './ask-everything.js';
import { askDoor, askedAt } from './doors.js';
import { hostileCases } from './hostile-cases.js';
import type { Question } from './question.js';

const gentle = {
  files: { 'schedule.due': 'schedule t "T" language 1 edition 1 of 2026-01-01 by "B" fits model "M"\ntask a "A" every 1 month' },
};
const [index, which] = process.argv.slice(2);
const hostile = hostileCases[Number(index)];
if (hostile === undefined) throw new RangeError(`no case ${index ?? ''}`);
const { door, asked, make } = hostile;
// What is made once, on the first use (the parser's tables), belongs to starting up.
askEverything(gentle);
if (door !== undefined) askDoor(door, gentle);
const files = make();
const questions = door === undefined ? commandsOn(files, asked) : askedAt(door, files);
const atOnce: Question = { what: 'all', ask: () => (door === undefined ? askEverything(files, asked) : askDoor(door, files)) };
const question = questions.find(({ what }) => what === which) ?? atOnce;
for (const step of question.before ?? []) step();
const [start, from] = [process.cpuUsage(), performance.now()];
let ended: object;
let [cpu, elapsed, again] = [0, 0, 0];
try {
  const { kind, said, shown, proof } = question.ask();
  elapsed = performance.now() - from;
  cpu = milliseconds(process.cpuUsage(start));
  proof?.();
  const second = process.cpuUsage();
  question.ask();
  again = milliseconds(process.cpuUsage(second));
  ended = { kind, said: said.slice(0, 12), shown: shown.length };
} catch (error) {
  ended = {
    kind: 'thrown',
    said: [
      error instanceof Error
        ? `${error.name}: ${error.message.slice(0, 200)} ${(error.stack ?? '').split('\n').slice(1, 4).join(' ')}`
        : 'something',
    ],
    shown: 0,
  };
}
console.log(JSON.stringify({ ...ended, cpu, elapsed, again, questions: questions.map(({ what }) => what) }));

function milliseconds({ user, system }: NodeJS.CpuUsage): number {
  return (user + system) / 1000;
}

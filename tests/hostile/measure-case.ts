/**
 * One case in a process of its own: says how it ended, and what it took beyond starting up: the first time, and once more when the code has run
 * before. `node measure-case.mjs INDEX`.
 */
import { askEverything, type Ending } from './ask-everything.js';
import { askDoor } from './doors.js';
import { hostileCases } from './hostile-cases.js';

const gentle = {
  files: { 'schedule.due': 'schedule t "T" language 1 edition 1 of 2026-01-01 by "B" fits model "M"\ntask a "A" every 1 month' },
};
const hostile = hostileCases[Number(process.argv[2])];
if (hostile === undefined) throw new RangeError(`no case ${process.argv[2] ?? ''}`);
// What is made once, on the first use (the parser's tables), belongs to starting up.
askEverything(gentle);
if (hostile.door !== undefined) askDoor(hostile.door, gentle);
const files = hostile.make();
const { door, asked } = hostile;
const ask = (): Ending => (door === undefined ? askEverything(files, asked) : askDoor(door, files));
const start = process.cpuUsage();
let ended: object;
let [cpu, again] = [0, 0];
try {
  const { kind, said, shown, proof } = ask();
  cpu = milliseconds(process.cpuUsage(start));
  proof?.();
  const second = process.cpuUsage();
  ask();
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
console.log(JSON.stringify({ ...ended, cpu, again, heap: process.memoryUsage().heapUsed }));

function milliseconds({ user, system }: NodeJS.CpuUsage): number {
  return (user + system) / 1000;
}

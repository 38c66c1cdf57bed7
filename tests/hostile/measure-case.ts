/**
 * One case in a process of its own: says how it ended, and what it took beyond starting up. `node measure-case.mjs INDEX`.
 */
import { askEverything } from './ask-everything.js';
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
const before = process.cpuUsage();
const start = performance.now();
let ended: object;
let taken = { cpu: 0, wall: 0 };
try {
  const { kind, said, shown, proof } = hostile.door === undefined ? askEverything(files, hostile.asked) : askDoor(hostile.door, files);
  taken = takenSince();
  proof?.();
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
console.log(JSON.stringify({ ...ended, ...taken, heap: process.memoryUsage().heapUsed }));

function takenSince(): { readonly cpu: number; readonly wall: number } {
  const { user, system } = process.cpuUsage(before);
  return { cpu: (user + system) / 1000, wall: performance.now() - start };
}

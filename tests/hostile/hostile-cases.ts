/* eslint-disable max-lines, @typescript-eslint/no-explicit-any, @typescript-eslint/no-unsafe-return, @typescript-eslint/no-unsafe-member-access, @typescript-eslint/no-unsafe-call, @typescript-eslint/no-unsafe-assignment --
   a list is long, and a forger keeps to no types */
/**
 * Files made to hurt. Each is made when it is asked for, because some are large.
 */
import { compile } from '../../src/compile/compile.js';
import { graphFingerprint } from '../../src/graph/fingerprint.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Asked } from './ask-everything.js';
import type { Door } from './doors.js';
import type { HostileFiles } from './question.js';
import { wideCases } from './wide-cases.js';

/** One case: what it is, how it is made, and what has to be among the words said of it (nothing: it is simply answered). */
export interface HostileCase {
  readonly name: string;
  readonly make: () => HostileFiles;
  /** A code, a kind of problem or a part of the sentence that refuses it. */
  readonly says?: string;
  readonly asked?: Asked;
  /** Another way in or out than asking what is due. */
  readonly door?: Door;
}

const head = 'schedule t "T" language 1 edition 1 of 2026-01-01 by "B" fits model "M"\n';
const engine = 'meter engine "Hour meter" counts h\n';
/** The limit of one file, in UTF-16 code units. */
export const KIB_256 = 262_144;

function text(body: string, more: Readonly<Record<string, string>> = {}): () => HostileFiles {
  return () => ({ files: { 'schedule.due': head + body, ...more } });
}

function fill(start: string, unit: (index: number) => string, end = ''): string {
  const parts = [start];
  for (let size = start.length + end.length, index = 0; ; index += 1) {
    const next = unit(index);
    size += next.length;
    if (size > KIB_256) return parts.join('') + end;
    parts.push(next);
  }
}

function many(count: number, unit: (index: number) => string): string {
  return Array.from({ length: count }, (_, index) => unit(index)).join('');
}

function filled(body: string, unit: (index: number) => string, end = ''): () => HostileFiles {
  return () => ({ files: { 'schedule.due': fill(head + body, unit, end) } });
}

const texts: readonly HostileCase[] = [
  { name: 'nothing at all', make: () => ({ files: { 'schedule.due': '' } }), says: 'DW110' },
  { name: '16 MB of one letter', make: () => ({ files: { 'schedule.due': 'x'.repeat(16_000_000) } }), says: 'DW101' },
  { name: '100,000 parentheses', make: text(`${engine}task a "A" when ${'('.repeat(100_000)}`), says: 'DW102' },
  { name: 'parentheses in plans', make: text(`${engine}task a "A" every ${'('.repeat(100_000)}`), says: 'DW102' },
  { name: '100,000 times `not`', make: text(`task a "A" when ${'not '.repeat(60_000)} machine idle for 1 day`), says: 'DW102' },
  { name: 'a million names in one list', make: text(`task a "A" covers ${'b,'.repeat(1_000_000)}b`), says: 'DW101' },
  { name: '100,000 names in one list', make: text(`task a "A" covers ${'b,'.repeat(100_000)}b`), says: 'DW101' },
  { name: '256 KiB of names nobody declared', make: filled('task a "A" covers b', (i) => `, n${i.toString(36)}`), says: 'DW101' },
  {
    name: '256 KiB of conditions',
    make: filled(`${engine}task a "A" when engine above 1 h`, (i) => ` or engine above ${i} h`),
    says: 'DW101',
  },
  { name: '256 KiB of `and` and `or`', make: filled('task a "A" when machine idle for 1 day', () => ' and a on or a on'), says: 'DW101' },
  {
    name: '256 KiB of limits in one plan',
    make: filled(`${engine}task a "A" every 1 h`, (i) => ` or ${i + 1} h`, ' whichever first'),
    says: 'DW101',
  },
  { name: '256 KiB of declarations of one name', make: filled('', () => 'duty d "D"\n') },
  { name: '256 KiB of duties', make: filled('', (i) => `duty d${i.toString(36)} "D"\n`) },
  { name: '256 KiB of unknown words', make: filled('', (i) => `w${i.toString(36)} `) },
  {
    name: '256 KiB of near misses',
    make: filled('duty abcdefgh "D"\n', (i) => `task t${i} "T" every 5 h of work in abcdefgx\n`),
  },
  {
    name: "256 KiB of tasks that are one another's near misses",
    make: filled('', (i) => `task task-number-${i} "T" covers task-numbre-${i}\n`),
  },
  {
    name: "4,900 tasks that are one another's near misses",
    make: text(many(4_900, (i) => `task task-number-${i} "T" covers task-numbre-${i}\n`)),
    says: 'DW220',
  },
  {
    name: '4,900 tasks, each asked for by one name nearly its own',
    make: text(many(4_900, (i) => `task t${i} "T" every 5 h of work in t${i}x\n`)),
    says: 'DW220',
  },
  { name: 'tasks each covering the next', make: filled('', (i) => `task t${i} "T" covers t${i + 1}\n`), says: 'DW204' },
  { name: '4,000 tasks, each met by the next', make: () => ({ files: { 'schedule.due': chain(4_000, 'met by') } }) },
  { name: '4,000 tasks, each restarting the next', make: () => ({ files: { 'schedule.due': chain(4_000, 'restarts') } }) },
  {
    name: '2,000 tasks, each covering the next',
    make: () => ({ files: { 'schedule.due': chain(2_000, 'covers') } }),
    says: 'DW204',
  },
  { name: '310 tasks, each covering the next', make: () => ({ files: { 'schedule.due': chain(310, 'covers') } }) },
  { name: '500 tasks, each following the next', make: () => ({ files: { 'schedule.due': chain(500, 'follows') } }) },
  { name: '1,000 tasks, each asked for by the one before', make: () => ({ files: { 'schedule.due': askedChain(1_000) } }) },
  {
    name: 'a title of 256 KiB',
    make: () => ({ files: { 'schedule.due': `${head}task a "${'M'.repeat(KIB_256 - head.length - 12)}" every 1 month` } }),
  },
  { name: 'a title of 256 KiB that never ends', make: text(`task a "${'M'.repeat(260_000)}`) },
  { name: 'a name of 256 KiB', make: () => ({ files: { 'schedule.due': `${head}task ${'a'.repeat(260_000)} "T" every 1 month` } }) },
  { name: 'a number of 256 KiB', make: text(`task a "T" every ${'9'.repeat(260_000)} months`) },
  { name: 'a comment of 256 KiB', make: text(`# ${'c'.repeat(260_000)}`) },
  { name: '256 KiB of line ends', make: text('\n'.repeat(260_000)) },
  { name: '256 KiB of carriage returns', make: text('\r'.repeat(260_000)) },
  { name: '256 KiB of direction-turning characters', make: text(`task a "${'\u202e'.repeat(260_000)}"`), says: 'DW104' },
  { name: '256 KiB of halves of surrogate pairs', make: text('\ud800 '.repeat(130_000)), says: 'DW104' },
  { name: '256 KiB of signs that mean nothing', make: text('§ '.repeat(130_000)), says: 'DW103' },
  { name: '256 KiB of words in capitals', make: text('Xa '.repeat(86_000)), says: 'DW' },
  { name: '256 KiB of dates in an odd form', make: text('1.2.2026 '.repeat(28_000)), says: 'DW' },
  { name: '256 KiB of quotes', make: text('" '.repeat(130_000)), says: 'DW101' },
  { name: '256 KiB of backslashes in quotes', make: text(`"${'\\\\'.repeat(130_000)}"`), says: 'DW' },
  { name: '256 KiB of spaces between two words', make: text(`task a "A" every 1${' '.repeat(260_000)}month`) },
  { name: 'a hundred million years', make: text('task a "A" every 100000000 years count from due if late allow 50 % late'), asked: 'all' },
  { name: 'a hundred million years, on a day', make: text('task a "A" every 100000000 years on 29 February where it exists') },
  { name: 'a ten-thousandth of an hour', make: text(`${engine}task a "A" every 0.0001 h of engine count from due if late`) },
  { name: 'a tick at a time on marks', make: text(`${engine}task a "A" every multiple of 1 s of engine`) },
  {
    name: '5,001 rules',
    make: () => ({ files: { 'schedule.due': head + 'task a "A" ' + 'after work\n task a "A" '.repeat(5001) } }),
    says: 'DW204',
  },
  { name: '64 moving parts', make: () => ({ files: { 'schedule.due': parts(64) } }) },
  { name: '24 parts that depend on one another', make: () => ({ files: { 'schedule.due': tower(24) } }) },
];

function chain(count: number, word: string): string {
  const tasks = Array.from({ length: count }, (_, i) => `task t${i} "T" ${i + 1 < count ? `${word} t${i + 1}` : 'every 1 month'}`);
  return `${head}${tasks.join('\n')}`;
}

function askedChain(count: number): string {
  const tasks = Array.from(
    { length: count },
    (_, i) => `task t${i} "T" every 1 day reads g below 1 °C fine from 1 °C caution "C" then t${i + 1} now\n`,
  );
  return `${head}gauge g "G" reads °C\n${tasks.join('')}task t${count} "T" every 1 month`;
}

function parts(count: number): string {
  const all = Array.from({ length: count }, (_, i) => `position p${i} a, b, c\nstep s${i} "S" p${i} a to b\nstep r${i} "S" p${i} b to c\n`);
  const rest = Array.from({ length: count }, (_, i) => `p${i} a`).join(', ');
  const need = Array.from({ length: count }, (_, i) => `p${i} c`).join(', ');
  return `${head}${all.join('')}at rest ${rest}\ntask t "T" every 1 month with ${need}\n`;
}

/** A binary counter: to reach the last part's second position, all stances have to be gone through. */
function tower(count: number): string {
  const all = Array.from({ length: count }, (_, i) => {
    const below = Array.from({ length: i }, (_unused, j) => `p${j} ${j === i - 1 ? 'b' : 'a'}`).join(', ');
    return `position p${i} a, b\nstep s${i} "S" p${i} a to b ${below === '' ? '' : `while ${below}`}\n`;
  });
  const rest = Array.from({ length: count }, (_, i) => `p${i} a`).join(', ');
  return `${head}${all.join('')}at rest ${rest}\ntask t "T" every 1 month with p${count - 1} b\n`;
}

const sharedHead = 'part p "P"\n';
const includes: readonly HostileCase[] = [
  { name: 'a file that uses itself', make: text('', { 'schedule.due': 'schedule t "T" language 1 use "schedule"' }), says: 'DW2' },
  {
    name: 'two parts that use one another',
    make: () => ({
      files: { 'schedule.due': 'schedule t "T" language 1 use "a"', 'a.due': `part a "A" use "b"`, 'b.due': `part b "B" use "a"` },
    }),
    says: 'DW2',
  },
  {
    name: 'a ladder of 40 parts',
    make: () => ({ files: { 'schedule.due': 'schedule t "T" language 1 use "p0"', ...ladder(40) } }),
    says: 'DW204',
  },
  {
    name: '40 parts side by side',
    make: () => ({
      files: {
        'schedule.due': `schedule t "T" language 1 ${Array.from({ length: 40 }, (_, i) => `use "p${i}"`).join(' ')}`,
        ...Object.fromEntries(Array.from({ length: 40 }, (_, i) => [`p${i}.due`, sharedHead])),
      },
    }),
    says: 'DW204',
  },
  {
    name: '10,000 times the same large part',
    make: () => ({
      files: { 'schedule.due': fill('schedule t "T" language 1', () => ' use "p"'), 'p.due': fill(sharedHead, () => 'duty d "D"\n') },
    }),
  },
  {
    name: 'attachments that mount attachments, eight deep and ten wide',
    make: () => ({
      files: { 'schedule.due': mounts(0), ...Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`a${i + 1}.due`, mounts(i + 1)])) },
    }),
    says: 'DW204',
  },
  ...[
    '../../secret',
    '/etc/passwd',
    'C:\\secret',
    'file:///etc/passwd',
    'a/../../b',
    '\\\\host\\share',
    'a\u0000b',
    '%2e%2e/x',
    '~/x',
    '',
  ].map((path): HostileCase => ({
    name: `the path ${JSON.stringify(path)}`,
    make: () => ({ files: { 'schedule.due': `schedule t "T" language 1 use "${path.replaceAll('\\', '\\\\')}"` } }),
    says: path === 'a\u0000b' ? 'DW104' : 'DW202',
  })),
];

function ladder(count: number): Record<string, string> {
  return Object.fromEntries(Array.from({ length: count }, (_, i) => [`p${i}.due`, `${sharedHead} use "p${i + 1}"`]));
}

function mounts(level: number): string {
  const title = `schedule a${level} "A" language 1 edition 1 of 2026-01-01 by "B" fits model "M" ${level === 0 ? '' : 'for attachment'}`;
  return `${title}\n${Array.from({ length: 10 }, (_, i) => `attachment x${i} "X" follows "a${level + 1}"`).join('\n')}`;
}

const machineFiles = {
  'schedule.due': `${head}${engine}gauge coolant "C" reads °C\ndipstick oil "O" low to full is 1 L\nattachment mower "M"\nduty dusty "D"
event refit "R"\ndefect leak "L" classes wet, drops\nposition loader lowered, raised\nat rest loader lowered\nstep lift "L" loader lowered to raised
task service "S" every 100 h of engine or 12 months, whichever first count from due if late
task level "L" before each day's work reads oil below low hold "H" from low fine sooner at half the time that oil takes to fall to low
task dust "D" every 30 min of work in dusty when coolant climbs 6 °C within 20 min
task marks "M" every multiple of 250 h of engine
task yearly "Y" every year on 29 February
task nuts "N" at 1 h, 10 h of engine after refit`,
};

function book(...lines: readonly (object | string)[]): () => HostileFiles {
  return () => ({ files: machineFiles, logbook: lines.map((line) => (typeof line === 'string' ? line : JSON.stringify(line))).join('\n') });
}

function manyLines(count: number, line: (index: number) => string): () => HostileFiles {
  return () => ({ files: machineFiles, logbook: Array.from({ length: count }, (_, i) => line(i)).join('\n') });
}

const reading = (more: object): object => ({ id: 'r', on: '2026-05-01', kind: 'reading', ...more });
const hash = 'f'.repeat(64);

const logbooks: readonly HostileCase[] = [
  { name: 'year 999999', make: book(reading({ on: '999999-01-01' })), says: 'unreadable' },
  { name: 'year 0', make: book(reading({ on: '0000-01-01' })), says: 'unreadable' },
  {
    name: 'years 1 and 9999',
    make: book(
      { id: 'a', on: '0001-01-01', kind: 'machine', inService: '0001-01-01' },
      reading({ on: '9999-12-31', meters: { engine: 1 } }),
    ),
  },
  {
    name: 'in service in year 1, and everything since',
    make: book(
      { id: 'a', on: '2026-01-01', kind: 'machine', inService: '0001-01-01' },
      { id: 'd', on: '0001-01-01', kind: 'done', tasks: ['service', 'yearly', 'marks'] },
    ),
  },
  { name: 'not a number', make: book('{"id":"r","on":"2026-05-01","kind":"reading","meters":{"engine":NaN}}'), says: 'unreadable' },
  {
    name: 'numbers beyond all bounds',
    make: book('{"id":"r","on":"2026-05-01","kind":"reading","meters":{"engine":1e999}}'),
    says: 'unreadable',
  },
  {
    name: 'minus nought',
    make: book('{"id":"r","on":"2026-05-01","kind":"reading","meters":{"engine":-0},"readings":{"oil":-0,"coolant":-0}}'),
  },
  {
    name: 'a meter of ten thousand million hours',
    make: book(
      reading({ meters: { engine: 1e10 } }),
      { id: 'd', on: '2026-01-01', kind: 'done', tasks: ['service', 'marks'], meters: { engine: 0 } },
      { id: 'c', on: '2026-05-02', kind: 'confirm', entry: 'r' },
    ),
  },
  { name: 'a meter beyond its bound', make: book(reading({ meters: { engine: 1e11 } })), says: 'unreadable' },
  {
    name: 'an outing of ten thousand million hours',
    make: book({ id: 'o', on: '2026-05-01', at: '08:00', kind: 'outing', hours: 1e10, duties: [{ duty: 'dusty' }] }),
  },
  { name: 'the least number there is', make: book(reading({ meters: { engine: 5e-324 }, readings: { oil: 5e-324, coolant: -5e-324 } })) },
  {
    name: 'ids and names that would steer a terminal',
    make: book(
      reading({ id: '\u202eid\u001b[2J', meters: { '\u202em\u0007': -1 } }),
      reading({ id: '\u202eid\u001b[2J' }),
      reading({ id: '\u202eid\u001b[2J', note: '\u009b31m', meters: { '\u202ename': 2 } }),
      { id: 'd', on: '2026-05-02', kind: 'done', tasks: ['service', '\u2066'], by: '\u001b]0;x\u0007', meters: { engine: 1 } },
    ),
    says: 'same-id',
  },
  {
    name: 'halves of surrogate pairs',
    make: book('{"id":"\\ud800","on":"2026-05-01","kind":"reading","note":"\\udc00","meters":{"\\ud800":1}}'),
  },
  {
    name: 'JSON 200,000 deep',
    make: book(`{"id":"r","on":"2026-05-01","kind":"reading","meters":${'['.repeat(200_000)}${']'.repeat(200_000)}}`),
    says: 'unreadable',
  },
  {
    name: 'JSON 200,000 deep, without an id',
    make: book(`{"on":"2026-05-01","kind":"reading","meters":${'{"a":'.repeat(200_000)}1${'}'.repeat(200_000)}}`),
    says: 'unreadable',
  },
  {
    name: 'an entry with a million members',
    make: book(`{"on":"2026-05-01","kind":"reading","meters":{${Array.from({ length: 100_000 }, (_, i) => `"m${i}":1`).join(',')}}}`),
    says: 'unreadable',
  },
  { name: 'a line of 8 MB', make: book(reading({ note: 'n'.repeat(8_000_000) })), says: 'unreadable' },
  { name: 'a million empty lines', make: manyLines(1_000_000, () => '') },
  { name: 'a million broken lines', make: manyLines(1_000_000, () => '{'), says: 'unreadable' },
  { name: 'a million readings', make: manyLines(1_000_000, (i) => `{"on":"${i % 9}"}`), says: 'unreadable' },
  {
    name: '2,000 chained lines that fit nothing',
    make: manyLines(2_000, (i) => `{"id":"r${i}","on":"2026-05-01","kind":"reading","seq":${i + 1},"hash":"${hash}"}`),
    says: 'changed',
  },
  {
    name: '5,000 times one id, each with other content',
    make: manyLines(5_000, (i) => `{"id":"r","on":"2026-05-01","kind":"reading","meters":{"engine":${i}}}`),
    says: 'same-id',
  },
  {
    name: '2,000 readings of one day that contradict one another',
    make: manyLines(2_000, (i) => `{"id":"r${i}","on":"2026-05-01","kind":"reading","meters":{"engine":${(i * 7919) % 2000}}}`),
  },
  {
    name: '2,000 readings that fall day by day',
    make: manyLines(2_000, (i) => `{"id":"r${i}","on":"${day(i)}","kind":"reading","meters":{"engine":${5000 - i}}}`),
  },
  { name: '5,000 voids of voids', make: manyLines(5_000, (i) => `{"id":"v${i}","on":"2026-05-01","kind":"void","entry":"v${i - 1}"}`) },
  {
    name: '5,000 voids in a ring',
    make: manyLines(5_000, (i) => `{"id":"v${i}","on":"2026-05-01","kind":"void","entry":"v${(i + 1) % 5000}"}`),
  },
  {
    name: '5,000 confirmations of one another',
    make: manyLines(5_000, (i) => `{"id":"v${i}","on":"2026-05-01","kind":"confirm","entry":"v${(i + 1) % 5000}"}`),
  },
  {
    name: '2,000 outings under way',
    make: manyLines(2_000, (i) => `{"id":"o${i}","on":"2026-05-01","at":"08:00","kind":"outing","duties":[{"duty":"dusty"}]}`),
  },
  {
    name: '2,000 doings of everything',
    make: manyLines(
      2_000,
      (i) =>
        `{"id":"d${i}","on":"${day(i)}","kind":"done","tasks":["service","level","dust","marks","yearly","nuts"],"meters":{"engine":${i}}}`,
    ),
  },
  {
    name: '2,000 replacements of a meter',
    make: manyLines(2_000, (i) => `{"id":"m${i}","on":"${day(i)}","kind":"meter-replaced","meter":"engine","final":1e10,"initial":0}`),
  },
  {
    name: 'a reading for each minute of a day',
    make: manyLines(1_440, (i) => `{"id":"t${i}","on":"2026-05-01","at":"${minute(i)}","kind":"reading","readings":{"coolant":${i % 90}}}`),
  },
];

function day(index: number): string {
  const month = 1 + (Math.floor(index / 28) % 12);
  return `${2010 + Math.floor(index / 336)}-${String(month).padStart(2, '0')}-${String(1 + (index % 28)).padStart(2, '0')}`;
}

function minute(index: number): string {
  return `${String(Math.floor(index / 60)).padStart(2, '0')}:${String(index % 60).padStart(2, '0')}`;
}

/** The graph of the machine above; a change of it is sealed anew, as a forger would. */
export function forged(change: (graph: any) => void): () => HostileFiles {
  return () => {
    const { graph } = compile('schedule.due', (path) => (path === 'schedule.due' ? machineFiles['schedule.due'] : undefined));
    const copy = JSON.parse(JSON.stringify(graph)) as RuleGraph;
    change(copy);
    return {
      graph: JSON.stringify({ ...copy, fingerprint: graphFingerprint(copy) }),
      logbook: '{"on":"2026-05-01","kind":"reading","meters":{"engine":120}}',
    };
  };
}

const last = (graph: any): number => graph.nodes.length;
const origin = { source: 0, line: 1, column: 1, text: 'x' };

function forgery(name: string, says: string, change: (graph: any) => void): HostileCase {
  return { name: `a graph with ${name}`, make: forged(change), says };
}

const graphs: readonly HostileCase[] = [
  { name: 'a graph that is no JSON', make: () => ({ graph: '{"format":' }), says: 'not a JSON object' },
  { name: 'a graph that is a list', make: () => ({ graph: '[]' }), says: 'not a JSON object' },
  {
    name: 'a graph of version 1e9',
    make: () => ({ graph: '{"format":"duewright-rule-graph","version":1e9}' }),
    says: 'version 1000000000',
  },
  {
    name: 'a graph of a version made of lists',
    make: () => ({ graph: `{"format":"duewright-rule-graph","version":${'['.repeat(100_000)}${']'.repeat(100_000)}}` }),
    says: 'version none',
  },
  {
    name: 'a graph 200,000 deep',
    make: () => ({ graph: `{"format":"duewright-rule-graph","version":1,"nodes":${'['.repeat(200_000)}${']'.repeat(200_000)}}` }),
    says: 'should',
  },
  {
    name: 'a graph of 40 MB',
    make: () => ({ graph: `{"format":"duewright-rule-graph","version":1,"x":"${'x'.repeat(40_000_000)}"}` }),
    says: 'limit is',
  },
  {
    name: 'a graph of a million nodes that are none',
    make: () => ({ graph: `{"format":"duewright-rule-graph","version":1,"nodes":[${'0,'.repeat(1_000_000)}0]}` }),
    says: 'should',
  },
  {
    name: 'a graph that is all there but the fingerprint',
    make: () => ({ graph: (forged(() => undefined)().graph ?? '').replace('Hour meter', 'Hour metre') }),
    says: 'fingerprint',
  },
  forgery('a node that refers to itself', 'comes later', (graph) =>
    graph.nodes.push({ id: last(graph), kind: 'not', part: last(graph), origin }),
  ),
  forgery(
    'a node that refers to a later one',
    'comes later',
    (graph) => graph.nodes.unshift({ id: 0, kind: 'not', part: 5, origin }) && renumber(graph),
  ),
  forgery('a node at another id', 'own id', (graph) => (graph.nodes[0].id = 3)),
  forgery('a node of a kind nobody knows', 'kind', (graph) => (graph.nodes[0].kind = 'constructor')),
  forgery('a node of the kind `__proto__`', 'kind', (graph) => (graph.nodes[0].kind = '__proto__')),
  forgery('a condition where a trigger belongs', 'wrong sort', (graph) => {
    graph.nodes.push({ id: last(graph), kind: 'idle', span: { on: 'calendar', unit: 'days', count: 1 }, origin });
    graph.tasks[0].trigger = last(graph) - 1;
  }),
  forgery('a trigger where a condition belongs', 'wrong sort', (graph) => (graph.tasks[0].gate = graph.tasks[0].trigger)),
  forgery('a trigger that is not there', 'wrong sort', (graph) => (graph.tasks[0].trigger = 1e9)),
  forgery('half a node id', '`tasks.0.trigger`', (graph) => (graph.tasks[0].trigger = 0.5)),
  forgery('a number written as text', '`tasks.0.trigger`', (graph) => (graph.tasks[0].trigger = '0')),
  forgery('not-a-number as text', 'ticks', (graph) => (graph.nodes.find((node: any) => node.kind === 'interval').amount.ticks = 'NaN')),
  forgery('a negative span', 'ticks', (graph) => (graph.nodes.find((node: any) => node.amount?.on === 'meter').amount.ticks = -1)),
  forgery('1e15 months', 'count', (graph) => (graph.nodes.find((node: any) => node.amount?.on === 'calendar').amount.count = 1e15)),
  {
    name: 'a graph with a thousand million months',
    make: forged((graph) => (graph.nodes.find((node: any) => node.amount?.on === 'calendar').amount.count = 1e9)),
  },
  {
    name: 'a graph with a tick at a time',
    make: forged((graph) => graph.nodes.forEach((node: any) => node.amount?.on === 'meter' && (node.amount.ticks = 1))),
  },
  {
    name: 'a graph with no ticks at a time',
    make: forged((graph) => graph.nodes.forEach((node: any) => node.amount?.on === 'meter' && (node.amount.ticks = 0))),
  },
  {
    name: 'a graph with no months at a time',
    make: forged((graph) => graph.nodes.forEach((node: any) => node.amount?.on === 'calendar' && (node.amount.count = 0))),
  },
  forgery('a month 13', 'month', (graph) => (graph.nodes.find((node: any) => node.kind === 'calendar-marks').days[0].month = 13)),
  forgery('a missing field', 'should', (graph) => delete graph.tasks[0].site.seconds),
  forgery('a field too many', 'other members', (graph) => (graph.tasks[0].site.seconds2 = 1)),
  forgery(
    'a meter that is not there',
    'meters',
    (graph) => (graph.nodes.find((node: any) => node.amount?.on === 'meter').amount.meter = 'constructor'),
  ),
  forgery('two tasks of one name', 'same id', (graph) => graph.tasks.push(graph.tasks[0])),
  forgery('tasks that are met by one another', 'circle', (graph) => {
    graph.tasks[0].metBy = [graph.tasks[1].id];
    graph.tasks[1].metBy = [graph.tasks[0].id];
  }),
  forgery('a position that its part lacks', 'position', (graph) => (graph.access.rest.loader = 'constructor')),
  forgery('a part without positions', 'position', (graph) => graph.access.parts.push({ id: 'x', positions: [], origin })),
  forgery('a source that is not there', 'source', (graph) => (graph.tasks[0].origin = { ...origin, source: 7 })),
  { name: 'a graph of conditions 20,000 deep', make: forged((graph) => deepConditions(graph, 20_000)), says: 'deep' },
  { name: 'a graph of shared conditions, 2^60 when written out', make: forged((graph) => doubled(graph, 60)), says: 'written out' },
  { name: 'a graph with 20,000 tasks', make: forged((graph) => manyTasks(graph, 20_000)), says: 'tasks' },
];

function renumber(graph: any): void {
  graph.nodes.forEach((node: any, index: number) => (node.id = index));
}

function deepConditions(graph: any, depth: number): void {
  graph.nodes.push({ id: last(graph), kind: 'idle', span: { on: 'calendar', unit: 'days', count: 1 }, origin });
  for (let level = 0; level < depth; level += 1) graph.nodes.push({ id: last(graph), kind: 'not', part: last(graph) - 1, origin });
  graph.tasks[0].gate = last(graph) - 1;
}

function doubled(graph: any, depth: number): void {
  graph.nodes.push({ id: last(graph), kind: 'idle', span: { on: 'calendar', unit: 'days', count: 1 }, origin });
  for (let level = 0; level < depth; level += 1) {
    graph.nodes.push({ id: last(graph), kind: 'and', parts: [last(graph) - 1, last(graph) - 1], origin });
  }
  graph.tasks[0].gate = last(graph) - 1;
}

function manyTasks(graph: any, count: number): void {
  const [task] = graph.tasks;
  for (let index = 0; index < count; index += 1) graph.tasks.push({ ...task, id: `t${index}` });
}

/** Every hostile file. */
export const hostileCases: readonly HostileCase[] = [...texts, ...includes, ...logbooks, ...graphs, ...wideCases];

/** One process of fuzzing: see fuzz.mjs. Arguments: the bundled target, the sort of input, the seed, the time to end at. */
import { readdirSync, readFileSync } from 'node:fs';
import { Session } from 'node:inspector';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const [, , target, sort, seedText, endText] = process.argv;
const root = fileURLToPath(new URL('..', import.meta.url));
const LONGEST = 20_000;

const session = new Session();
session.connect();
const post = (method, params) => {
  let answer;
  session.post(method, params, (error, result) => {
    if (error) throw error;
    answer = result;
  });
  return answer;
};
post('Profiler.enable');
post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
const { tryInput, graphText, tableOf, feeds } = await import(pathToFileURL(target).href);

let state = Number(seedText) >>> 0;
/** Mulberry32: small, and the same everywhere. */
function random(below) {
  state = (state + 0x6d2b79f5) >>> 0;
  let t = Math.imul(state ^ (state >>> 15), state | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return ((t ^ (t >>> 14)) >>> 0) % below;
}
const pick = (items) => items[random(items.length)];

const schedules = textsBelow('schedules', '.due').filter((text) => text.length < LONGEST);
const machine = graphText(readFileSync(join(root, 'schedules/irrigation-pump.due'), 'utf8'));
const logbooks = textsBelow('schedules', '.jsonl').map((text) => text.slice(0, LONGEST));
const corpora = {
  schedule: () => schedules,
  logbook: () => logbooks,
  graph: () => schedules.map(graphText).filter((text) => text !== '' && text.length < 60_000),
  layout: () => schedules,
  table: () => logbooks.map(tableOf),
  feed: () => feeds,
};
const corpus = corpora[sort]();
const words = [...new Set(corpus.flatMap((text) => text.match(/"[^"\n]{0,40}"|[\p{L}\d.°-]+|[^\s]/gu) ?? []))];
const odd = [
  '__proto__',
  'constructor',
  '"',
  '(',
  ')',
  '\u202e',
  '\ud800',
  '\u0000',
  '\u001b[2J',
  '<script>',
  '-0',
  '1e999',
  '99999999999',
  '0',
  '-1',
  '0.5',
  '9999-12-31',
  '0001-01-01',
  '2026-02-29',
  'null',
  '[]',
  '{}',
  'not',
  ',',
  '\n',
];

const seen = new Set();
const kept = [...corpus];
let tried = 0;
let faults = 0;
let reported = Date.now();
for (const input of corpus) await run(input);
const atStart = seen.size;
await say(`${corpus.length} inputs to begin with reach ${atStart} counted blocks`);
while (Date.now() < Number(endText)) {
  await run(bend(pick(kept)));
  if (Date.now() - reported > 30_000) await say(progress());
}
await say(progress());
await send({ kind: 'said', words: `ends; ${faults} inputs at fault` });
process.exit(0);

async function run(input) {
  tried += 1;
  // Waited for: this loop leaves no other time in which a message could be on its way.
  await send({ kind: 'trying', input });
  try {
    tryInput(sort, input, machine);
  } catch (error) {
    faults += 1;
    await send({ kind: 'fault', input, fault: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
  const before = seen.size;
  for (const { url, functions } of post('Profiler.takePreciseCoverage').result) {
    if (!url.endsWith('target.mjs')) continue;
    for (const { ranges } of functions) {
      for (const { startOffset, endOffset, count } of ranges)
        if (count > 0) seen.add(`${startOffset}-${endOffset}-${Math.min(12, Math.floor(Math.log2(count)))}`);
    }
  }
  if (seen.size > before && tried > corpus.length) kept.push(input);
}

/** One to four changes, of words, of stretches, or by crossing with another input. */
function bend(input) {
  let text = input;
  for (let left = 1 + random(4); left > 0; left -= 1) text = change(text);
  return text.slice(0, sort === 'graph' ? 120_000 : LONGEST);
}

function change(text) {
  const at = random(text.length + 1);
  const pieces = [...text.matchAll(/"[^"\n]*"|[\p{L}\d.°-]+|[^\s]/gu)];
  const piece = pieces.length === 0 ? undefined : pick(pieces);
  const swap = (word) =>
    piece === undefined ? text + word : text.slice(0, piece.index) + word + text.slice(piece.index + piece[0].length);
  switch (random(9)) {
    case 0:
      return swap('');
    case 1:
    case 2:
      return swap(pick(words));
    case 3:
      return swap(pick(odd));
    case 4:
      return swap(String(pick([0, 1, -1, 7, 31, 1e9, 1e15, 0.001, random(100_000)])));
    case 5:
      return text.slice(0, at) + pick(odd) + text.slice(at);
    case 6: {
      const end = Math.min(text.length, at + 1 + random(200));
      return text.slice(0, at) + text.slice(end);
    }
    case 7: {
      const stretch = text.slice(at, at + 1 + random(200));
      const to = random(text.length + 1);
      return text.slice(0, to) + stretch + text.slice(to);
    }
    default: {
      const other = pick(kept);
      const [from, to] = [lineStart(text, at), lineStart(other, random(other.length + 1))];
      return text.slice(0, from) + other.slice(to);
    }
  }
}

function lineStart(text, at) {
  return text.lastIndexOf('\n', at) + 1;
}

function textsBelow(folder, ending) {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith(ending))
    .sort()
    .map((path) => readFileSync(join(root, folder, path), 'utf8'));
}

function send(message) {
  return new Promise((resolve) => process.send(message, resolve));
}

function progress() {
  return `${tried} inputs tried, ${kept.length - corpus.length} kept for new coverage, ${seen.size - atStart} counted blocks beyond the first ${atStart}, ${faults} at fault`;
}

function say(words) {
  reported = Date.now();
  return send({ kind: 'said', words });
}

import type { RuleGraph } from '../../engine.js';
import type { Day } from '../../values/moment.js';
import { type BlockWorker, ownThread, workerThread, type WorkerSetup } from './block-workers.js';
import { fleetBlocks, type LineBlock, type LineSource } from './fleet-blocks.js';
import type { BlockAnswer, FleetFormat } from './judge-block.js';

/** How far it has come. */
export interface FleetProgress {
  readonly lines: number;
  readonly machines: number;
  readonly refused: number;
}

/** How a fleet is assessed. */
export interface FleetOptions {
  readonly today: Day;
  /** Default JSON lines. */
  readonly format?: FleetFormat;
  /** Worker threads; 0 (the default) judges in this thread. */
  readonly workers?: number;
  /** The bundle of `fleet-worker.ts`; needed with `workers`. */
  readonly script?: URL;
  /** Lines in a block. Default 512. */
  readonly lines?: number;
  /** Told after each block. */
  readonly onProgress?: (progress: FleetProgress) => void;
}

const LINES = 512;

/**
 * Judges a fleet from a stream of lines (docs/fleets.md), block by block, in the order of the stream.
 *
 * Back-pressure runs all the way: blocks are read only while fewer than two for each worker are on their way, and they are on their way
 * until their answers have been taken. What memory it needs does not depend on how many machines there are.
 *
 * @throws whatever the stream or a worker throws; all workers are stopped then, as they are when the taking ends early.
 * @example for await (const block of assessFleet(graph, createReadStream(path), { today })) report(block);
 */
export async function* assessFleet(graph: RuleGraph, input: LineSource, options: FleetOptions): AsyncGenerator<BlockAnswer> {
  const lines = options.lines ?? LINES;
  const blocks = fleetBlocks(input, lines);
  const opened = options.format === 'csv' ? await openTable(blocks) : { heading: null, first: [] };
  const workers = startWorkers(options, { graph, today: options.today, lines, heading: opened.heading });
  try {
    let progress: FleetProgress = { lines: 0, machines: 0, refused: 0 };
    for await (const answer of inOrder(chained(opened.first, blocks), workers)) {
      const refused = answer.notes.filter((note) => note.refused).length;
      progress = {
        lines: progress.lines + answer.lines,
        machines: progress.machines + answer.machines.length,
        refused: progress.refused + refused,
      };
      options.onProgress?.(progress);
      yield answer;
    }
  } finally {
    await Promise.all(workers.map((worker) => worker.stop()));
  }
}

function startWorkers({ workers = 0, script }: FleetOptions, setup: WorkerSetup): readonly BlockWorker[] {
  if (workers <= 0 || script === undefined) return [ownThread(setup)];
  return Array.from({ length: workers }, () => workerThread(script, setup));
}

/** Hands blocks round to the workers, each of which has one in hand and one waiting, and gives the answers in order. */
async function* inOrder(blocks: AsyncIterable<LineBlock>, workers: readonly BlockWorker[]): AsyncGenerator<BlockAnswer> {
  const waiting: Promise<BlockAnswer>[] = [];
  const busy: Promise<unknown>[] = workers.map(() => Promise.resolve());
  let turn = 0;
  for await (const block of blocks) {
    const at = turn % workers.length;
    const worker = workers[at];
    if (worker === undefined) return;
    const answer = (busy[at] ?? Promise.resolve()).then(() => worker.judge(block));
    // Somebody asks for every answer in the end; until then a failure is not unheard of, only not heard yet.
    busy[at] = answer.catch(() => undefined);
    waiting.push(answer);
    turn += 1;
    if (waiting.length >= 2 * workers.length) yield* taken(waiting, 1);
  }
  yield* taken(waiting, waiting.length);
}

async function* taken(waiting: Promise<BlockAnswer>[], count: number): AsyncGenerator<BlockAnswer> {
  for (const answer of waiting.splice(0, count)) yield await answer;
}

/** Takes the heading off the first block. */
async function openTable(blocks: AsyncGenerator<LineBlock>): Promise<{ readonly heading: string; readonly first: readonly LineBlock[] }> {
  const opened = await blocks.next();
  if (opened.done === true) return { heading: '', first: [] };
  const { text, lines, first } = opened.value;
  const end = text.indexOf('\n');
  const heading = end < 0 ? text : text.slice(0, end);
  return { heading, first: end < 0 ? [] : [{ text: text.slice(end + 1), lines: lines - 1, first: first + 1 }] };
}

async function* chained(first: readonly LineBlock[], rest: AsyncIterable<LineBlock>): AsyncGenerator<LineBlock> {
  yield* first;
  yield* rest;
}

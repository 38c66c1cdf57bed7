import type { RuleGraph } from '../../engine.js';
import type { Day } from '../../values/moment.js';
import { type BlockWorker, ownThread, workerThread, type WorkerSetup } from './block-workers.js';
import type { LineBlock, LineSource } from './fleet-blocks.js';
import type { BlockAnswer, FleetFormat } from './judge-block.js';
import { openFleet } from './open-fleet.js';
import type { TableHeading } from './table-heading.js';

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
  const { heading, blocks } = await openFleet(graph, input, lines, options.format);
  if (heading?.usable === false) {
    yield aboutHeading(heading);
    return;
  }
  const workers = startWorkers(options, { graph, today: options.today, lines, heading });
  try {
    let progress: FleetProgress = { lines: heading === null ? 0 : 1, machines: 0, refused: 0 };
    if (heading !== null && heading.notes.length > 0) yield aboutHeading(heading);
    for await (const answer of inOrder(blocks, workers)) {
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

/** An answer about no machine: what there is to say of a heading. */
function aboutHeading({ notes }: TableHeading): BlockAnswer {
  return {
    machines: [],
    at: [],
    lines: 1,
    stride: 0,
    state: new Uint8Array(),
    left: new Float64Array(),
    governing: new Int32Array(),
    verdict: new Uint8Array(),
    notes,
  };
}

import { Worker } from 'node:worker_threads';
import type { RuleGraph } from '../../engine.js';
import { planColumns } from '../../fleet/plan-columns.js';
import type { Day } from '../../values/moment.js';
import type { LineBlock } from './fleet-blocks.js';
import { type BlockAnswer, BlockJudge } from './judge-block.js';
import type { TableHeading } from './table-heading.js';

/** What a worker is told once. */
export interface WorkerSetup {
  readonly graph: RuleGraph;
  readonly today: Day;
  /** Most lines of a block. */
  readonly lines: number;
  readonly heading: TableHeading | null;
}

/** Somebody who judges blocks, one at a time. */
export interface BlockWorker {
  readonly judge: (block: LineBlock) => Promise<BlockAnswer>;
  readonly stop: () => Promise<void>;
}

/** Judges in this thread. */
export function ownThread({ graph, today, lines, heading }: WorkerSetup): BlockWorker {
  const judge = new BlockJudge(planColumns(graph), today, lines, heading);
  return { judge: (block) => Promise.resolve(judge.judge(block)), stop: () => Promise.resolve() };
}

/** Judges in a thread of its own, which runs the bundle of `fleet-worker.ts` at `script`. */
export function workerThread(script: URL, setup: WorkerSetup): BlockWorker {
  const worker = new Worker(script, { workerData: setup });
  let settle: { readonly resolve: (answer: BlockAnswer) => void; readonly reject: (error: Error) => void } | null = null;
  let failed: Error | null = null;
  const fail = (error: Error): void => {
    failed = error;
    settle?.reject(error);
  };
  worker.on('message', (answer: BlockAnswer) => settle?.resolve(answer));
  worker.on('error', fail);
  worker.on('exit', (code) => fail(new Error(`a worker thread ended with ${code}`)));
  return {
    judge: (block) =>
      new Promise((resolve, reject) => {
        if (failed !== null) return reject(failed);
        settle = { resolve, reject };
        worker.postMessage(block);
      }),
    stop: async () => {
      await worker.terminate();
    },
  };
}

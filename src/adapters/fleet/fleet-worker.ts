/** What runs in each worker thread: blocks come in, answers go out, their memory with them. */
import { parentPort, workerData } from 'node:worker_threads';
import { planColumns } from '../../fleet/plan-columns.js';
import type { LineBlock } from './fleet-blocks.js';
import { BlockJudge } from './judge-block.js';
import type { WorkerSetup } from './block-workers.js';

const { graph, today, lines, heading } = workerData as WorkerSetup;
const judge = new BlockJudge(planColumns(graph), today, lines, heading);

parentPort?.on('message', (block: LineBlock) => {
  const answer = judge.judge(block);
  parentPort?.postMessage(answer, [
    answer.state.buffer,
    answer.left.buffer,
    answer.governing.buffer,
    answer.verdict.buffer,
  ] as ArrayBuffer[]);
});

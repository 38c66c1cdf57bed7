import type { Entry, RuleGraph } from '../../engine.js';
import { planColumns } from '../../fleet/plan-columns.js';
import type { Day } from '../../values/moment.js';
import type { LineSource } from './fleet-blocks.js';
import { BlockJudge, type FleetFormat } from './judge-block.js';
import { openFleet } from './open-fleet.js';

const LINES = 512;

/** The history of the first machine of a name in a fleet, for whoever asks why it stands as it does; `null` if it is not there. */
export async function findMachine(
  graph: RuleGraph,
  input: LineSource,
  name: string,
  today: Day,
  format?: FleetFormat,
): Promise<readonly Entry[] | null> {
  const { heading, blocks } = await openFleet(graph, input, LINES, format);
  if (heading?.usable === false) return null;
  const judge = new BlockJudge(planColumns(graph), today, LINES, heading);
  for await (const block of blocks) {
    judge.read(block);
    const entries = judge.entriesOf(name);
    if (entries !== null) return entries;
  }
  return null;
}

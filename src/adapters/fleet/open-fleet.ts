import type { RuleGraph } from '../../engine.js';
import { planColumns } from '../../fleet/plan-columns.js';
import { fleetBlocks, type LineBlock, type LineSource } from './fleet-blocks.js';
import type { FleetFormat } from './judge-block.js';
import { readHeading, type TableHeading } from './table-heading.js';

/** The lines of a fleet, in blocks, and over them the heading if they are a table. */
export interface OpenedFleet {
  /** `null` for JSON lines, and for a table without a line. */
  readonly heading: TableHeading | null;
  readonly blocks: AsyncIterable<LineBlock>;
}

/** Begins to read a fleet, at most `most` lines at a time. */
export async function openFleet(graph: RuleGraph, input: LineSource, most: number, format: FleetFormat = 'jsonl'): Promise<OpenedFleet> {
  const blocks = fleetBlocks(input, most);
  if (format === 'jsonl') return { heading: null, blocks };
  const opened = await blocks.next();
  if (opened.done === true) return { heading: null, blocks };
  const { text, lines, first } = opened.value;
  const end = text.indexOf('\n');
  const heading = readHeading(end < 0 ? text : text.slice(0, end), planColumns(graph));
  // Nothing more is wanted of a table that cannot be read.
  if (!heading.usable) await blocks.return(undefined);
  const below = end < 0 ? [] : [{ text: text.slice(end + 1), lines: lines - 1, first: first + 1 }];
  return { heading, blocks: chained(below, blocks) };
}

async function* chained(first: readonly LineBlock[], rest: AsyncIterable<LineBlock>): AsyncGenerator<LineBlock> {
  yield* first;
  yield* rest;
}

import { Fleet } from '../../fleet/fleet.js';
import type { FleetStates } from '../../fleet/fleet-states.js';
import type { ColumnPlan } from '../../fleet/column-plan.js';
import type { Day } from '../../values/moment.js';
import { csvMachines } from './csv-machines.js';
import type { LineBlock } from './fleet-blocks.js';

/** How the lines of a fleet are written. */
export type FleetFormat = 'jsonl' | 'csv';

/** Something to be said of a line: it is no machine, or names what the schedule does not have. */
export interface LineNote {
  readonly line: number;
  readonly what: string;
  readonly refused: boolean;
}

/** The answer for one block; as in `FleetStates`, task `t` of machine `m` stands at `t * stride + m`. */
export interface BlockAnswer {
  readonly machines: readonly string[];
  readonly lines: number;
  readonly stride: number;
  readonly state: Uint8Array;
  readonly left: Float64Array;
  readonly governing: Int32Array;
  readonly verdict: Uint8Array;
  readonly notes: readonly LineNote[];
}

/** Judges one block after another in the same memory; the answer is a copy, to be given away. */
export class BlockJudge {
  private readonly fleet: Fleet;
  private readonly states: FleetStates;

  constructor(
    plan: ColumnPlan,
    private readonly today: Day,
    lines: number,
    /** The heading of a CSV; `null` for JSON lines. */
    private readonly heading: string | null,
  ) {
    this.fleet = new Fleet(plan, lines);
    this.states = this.fleet.newStates();
  }

  judge(block: LineBlock): BlockAnswer {
    this.fleet.clear();
    const notes = this.heading === null ? this.addLines(block) : this.addRows(block, this.heading);
    const { state, left, governing, verdict, stride } = this.fleet.assess(this.today, this.states);
    const machines = Array.from({ length: this.fleet.count }, (_, m) => this.fleet.nameOf(m));
    return {
      machines,
      lines: block.lines,
      stride,
      state: state.slice(),
      left: left.slice(),
      governing: governing.slice(),
      verdict: verdict.slice(0, machines.length),
      notes,
    };
  }

  private addLines({ text, first }: LineBlock): readonly LineNote[] {
    const notes: LineNote[] = [];
    let line = first;
    for (let from = 0; from < text.length; line += 1) {
      const feed = text.indexOf('\n', from);
      const to = feed < 0 ? text.length : feed;
      if (!isBlank(text, from, to)) note(notes, line, this.fleet.add(text, from, to));
      from = to + 1;
    }
    return notes;
  }

  private addRows({ text, first }: LineBlock, heading: string): readonly LineNote[] {
    const notes: LineNote[] = [];
    csvMachines(heading, text).forEach((read, i) => {
      if (read !== null) note(notes, first + i, this.fleet.addMachine(read));
    });
    return notes;
  }
}

function note(notes: LineNote[], line: number, added: ReturnType<Fleet['add']>): void {
  if (!added.ok) notes.push({ line, what: added.problem, refused: true });
  else if (added.strays.length > 0) notes.push({ line, what: added.strays.join('; '), refused: false });
}

function isBlank(text: string, from: number, to: number): boolean {
  for (let at = from; at < to; at += 1) if (text.charCodeAt(at) > 0x20) return false;
  return true;
}

import { type Added, Fleet } from '../../fleet/fleet.js';
import type { FleetStates } from '../../fleet/fleet-states.js';
import type { ColumnPlan } from '../../fleet/column-plan.js';
import type { Entry } from '../../engine.js';
import type { Day } from '../../values/moment.js';
import { csvMachines } from './csv-machines.js';
import { lineProblem } from '../../fleet/line-problem.js';
import type { LineBlock } from './fleet-blocks.js';
import { type LineNote, noteOf } from './line-note.js';
import type { TableHeading } from './table-heading.js';

/** How the lines of a fleet are written. */
export type FleetFormat = 'jsonl' | 'csv';

/** The answer for one block; as in `FleetStates`, task `t` of machine `m` stands at `t * stride + m`. */
export interface BlockAnswer {
  readonly machines: readonly string[];
  /** On which line each machine stands, counted from 1. */
  readonly at: readonly number[];
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
  /** Machine → its line. */
  private readonly at: number[] = [];

  constructor(
    plan: ColumnPlan,
    private readonly today: Day,
    lines: number,
    /** The heading of a table; `null` for JSON lines. */
    private readonly heading: TableHeading | null,
  ) {
    this.fleet = new Fleet(plan, lines);
    this.states = this.fleet.newStates();
  }

  /** Takes the machines of a block in, in place of those before. */
  read(block: LineBlock): readonly LineNote[] {
    this.fleet.clear();
    this.at.length = 0;
    return this.heading === null ? this.addLines(block) : this.addRows(block, this.heading);
  }

  /** The history of a machine of the block that was read last; `null` if it is not there. */
  entriesOf(name: string): readonly Entry[] | null {
    for (let m = 0; m < this.fleet.count; m += 1) if (this.fleet.nameOf(m) === name) return this.fleet.entriesOf(m);
    return null;
  }

  judge(block: LineBlock): BlockAnswer {
    const notes = this.read(block);
    const { state, left, governing, verdict, stride } = this.fleet.assess(this.today, this.states);
    const machines = Array.from({ length: this.fleet.count }, (_, m) => this.fleet.nameOf(m));
    return {
      machines,
      at: [...this.at],
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
      if (!isBlank(text, from, to)) this.note(notes, line, this.fleet.add(text, from, to));
      from = to + 1;
    }
    return notes;
  }

  private addRows({ text, first }: LineBlock, heading: TableHeading): readonly LineNote[] {
    const notes: LineNote[] = [];
    csvMachines(heading, text).forEach((read, i) => {
      if (read !== null) this.note(notes, first + i, this.fleet.addMachine(read));
    });
    return notes;
  }

  private note(notes: LineNote[], line: number, added: Added): void {
    if (!added.ok) {
      notes.push(noteOf(line, { code: added.code, what: added.problem, help: added.help }, true));
      return;
    }
    this.at.push(line);
    if (added.strays.length > 0) notes.push(noteOf(line, lineProblem('unknown-name', added.strays.join('; ')), false));
    const misfit = this.fleet.misfitOf(added.machine);
    if (misfit !== null) notes.push(noteOf(line, misfit, false));
  }
}

function isBlank(text: string, from: number, to: number): boolean {
  for (let at = from; at < to; at += 1) if (text.charCodeAt(at) > 0x20) return false;
  return true;
}

import type { ColumnPlan } from './column-plan.js';
import { type MachineColumns, NO_DAY } from './machine-columns.js';
import type { MonthTable } from './month-table.js';

const MOST = 1e10;
const POWERS = Array.from({ length: 23 }, (_, power) => 10 ** power);

const QUOTE = 0x22;
const COMMA = 0x2c;
const POINT = 0x2e;
const COLON = 0x3a;
const OPEN = 0x7b;
const CLOSE = 0x7d;
const BACKSLASH = 0x5c;
const ZERO = 0x30;

/**
 * Reads machine lines from JSON text straight into columns, without making an object of them.
 *
 * It knows the plain form of a line and no other: on an escape, an exponent, an unknown name, a day out of reach or anything wrong
 * it gives up, and the line is read the long way. What it does take it reads to the same bits as `JSON.parse`: a mantissa below
 * 2^53 over a power of ten up to 10^22 is rounded once (Clinger 1990).
 */
export class LineScanner {
  private text = '';
  private at = 0;
  private machine = 0;
  private latest = NO_DAY;
  private readonly tasks: NameTable;
  private readonly meters: NameTable;
  private readonly models: ReadonlySet<string>;

  constructor(
    private readonly columns: MachineColumns,
    private readonly months: MonthTable,
  ) {
    const { plan } = columns;
    this.tasks = new NameTable(plan.tasks.map(({ id }) => id));
    this.meters = new NameTable(meterIds(plan));
    this.models = new Set(plan.graph.schedule.fits.map(({ model }) => model));
  }

  /** Reads `text` from `from` up to `to` as machine `machine`; `false` if it has to be read the long way (and columns to be cleared). */
  scan(text: string, from: number, to: number, machine: number): boolean {
    this.text = text;
    this.at = from;
    this.machine = machine;
    this.latest = NO_DAY;
    this.columns.names[machine] = '';
    const read = this.members(Members.machine, 0) && this.rest(to);
    this.text = '';
    if (!read || this.columns.names[machine] === '') return false;
    if (this.hasReading(machine) && this.columns.readOn[machine] === NO_DAY) return false;
    this.columns.latest[machine] = this.latest;
    return true;
  }

  private rest(to: number): boolean {
    while (this.at < to && this.text.charCodeAt(this.at) <= 0x20) this.at += 1;
    return this.at === to;
  }

  private hasReading(machine: number): boolean {
    const { shown, stride } = this.columns;
    for (let at = machine; at < shown.length; at += stride) if ((shown[at] as number) >= 0) return true;
    return false;
  }

  /** One object, with what its members mean. */
  private members(what: Members, task: number): boolean {
    if (!this.take(OPEN)) return false;
    this.spaces();
    if (this.take(CLOSE)) return true;
    for (;;) {
      this.spaces();
      if (!this.take(QUOTE) || !this.member(what, task)) return false;
      this.spaces();
      if (this.take(CLOSE)) return true;
      if (!this.take(COMMA)) return false;
    }
  }

  private member(what: Members, task: number): boolean {
    switch (what) {
      case Members.machine:
        return this.ofMachine();
      case Members.done:
        return this.lastDoing();
      case Members.doing:
        return this.ofDoing(task);
      case Members.shown:
        return this.reading(this.columns.shown, 0);
      case Members.doneShown:
        return this.reading(this.columns.doneShown, task * this.columns.plan.meters.length);
    }
  }

  private ofMachine(): boolean {
    const { columns, machine } = this;
    if (this.name('machine"')) return this.colon() && this.word(columns.names);
    if (this.name('on"')) return this.colon() && this.day(columns.readOn, machine);
    if (this.name('inService"')) return this.colon() && this.day(columns.inService, machine);
    if (this.name('meters"')) return this.colon() && this.members(Members.shown, 0);
    if (this.name('done"')) return this.colon() && this.members(Members.done, 0);
    // Of a model that the schedule does not fit the long way tells.
    if (this.name('model"')) return this.colon() && this.word(columns.models) && this.models.has(columns.models[machine] ?? '');
    if (!this.name('serial"') || !this.colon()) return false;
    const serial = this.number();
    columns.serial[machine] = serial;
    return Number.isInteger(serial);
  }

  private lastDoing(): boolean {
    const task = this.tasks.find(this.text, this.at);
    if (task < 0) return false;
    const { doneOn, stride } = this.columns;
    this.at = this.tasks.end;
    if (doneOn[task * stride + this.machine] !== NO_DAY) return false;
    return this.colon() && this.members(Members.doing, task) && doneOn[task * stride + this.machine] !== NO_DAY;
  }

  private ofDoing(task: number): boolean {
    if (this.name('on"')) return this.colon() && this.day(this.columns.doneOn, task * this.columns.stride + this.machine);
    return this.name('meters"') && this.colon() && this.members(Members.doneShown, task);
  }

  private reading(column: Float64Array, first: number): boolean {
    const meter = this.meters.find(this.text, this.at);
    if (meter < 0) return false;
    this.at = this.meters.end;
    if (!this.colon()) return false;
    const value = this.number();
    const at = (first + meter) * this.columns.stride + this.machine;
    if (!(value <= MOST) || (column[at] as number) >= 0) return false;
    column[at] = value;
    return true;
  }

  private word(into: (string | undefined)[]): boolean {
    if (!this.take(QUOTE)) return false;
    const end = this.text.indexOf('"', this.at);
    if (end < 0) return false;
    const word = this.text.slice(this.at, end);
    for (let i = 0; i < word.length; i += 1) if (word.charCodeAt(i) < 0x20 || word.charCodeAt(i) === BACKSLASH) return false;
    into[this.machine] = word;
    this.at = end + 1;
    return true;
  }

  /** "YYYY-MM-DD" into a column that has no day yet. */
  private day(column: Int32Array, place: number): boolean {
    const { text, at } = this;
    if (
      text.charCodeAt(at) !== QUOTE ||
      text.charCodeAt(at + 5) !== 0x2d ||
      text.charCodeAt(at + 8) !== 0x2d ||
      text.charCodeAt(at + 11) !== QUOTE
    )
      return false;
    const day = this.months.day(this.two(at + 1) * 100 + this.two(at + 3), this.two(at + 6), this.two(at + 9));
    if (Number.isNaN(day) || column[place] !== NO_DAY) return false;
    column[place] = day;
    if (day > this.latest) this.latest = day;
    this.at = at + 12;
    return true;
  }

  /** Two digits; NaN for anything else. */
  private two(at: number): number {
    const tens = this.text.charCodeAt(at) - ZERO;
    const ones = this.text.charCodeAt(at + 1) - ZERO;
    return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : Number.NaN;
  }

  /** A decimal without sign or exponent, of at most 15 digits; NaN for anything else. */
  private number(): number {
    const { text } = this;
    const start = this.at;
    let at = start;
    let mantissa = 0;
    let digit = text.charCodeAt(at) - ZERO;
    for (; digit >= 0 && digit <= 9; digit = text.charCodeAt(at) - ZERO) {
      mantissa = mantissa * 10 + digit;
      at += 1;
    }
    const whole = at - start;
    let places = 0;
    if (text.charCodeAt(at) === POINT) {
      at += 1;
      const from = at;
      digit = text.charCodeAt(at) - ZERO;
      for (; digit >= 0 && digit <= 9; digit = text.charCodeAt(at) - ZERO) {
        mantissa = mantissa * 10 + digit;
        at += 1;
      }
      places = at - from;
      if (places === 0) return Number.NaN;
    }
    if (whole === 0 || (whole > 1 && text.charCodeAt(start) === ZERO) || whole + places > 15) return Number.NaN;
    this.at = at;
    return places === 0 ? mantissa : mantissa / (POWERS[places] as number);
  }

  private name(name: string): boolean {
    if (!this.text.startsWith(name, this.at)) return false;
    this.at += name.length;
    return true;
  }

  private colon(): boolean {
    this.spaces();
    if (!this.take(COLON)) return false;
    this.spaces();
    return true;
  }

  private take(code: number): boolean {
    if (this.text.charCodeAt(this.at) !== code) return false;
    this.at += 1;
    return true;
  }

  private spaces(): void {
    while (this.text.charCodeAt(this.at) === 0x20) this.at += 1;
  }
}

/** What the members of an object stand for. */
enum Members {
  machine,
  done,
  doing,
  shown,
  doneShown,
}

/** Finds a name in text: most lines name things in one order, so the next one is tried first. */
class NameTable {
  /** Where the name that was found ends, its quote included. */
  end = 0;
  private next = 0;
  private readonly quoted: readonly string[];
  private readonly index: ReadonlyMap<string, number>;

  constructor(names: readonly string[]) {
    this.quoted = names.map((name) => `${name}"`);
    this.index = new Map(names.map((name, i) => [name, i]));
  }

  /** The index of the name that begins at `at`; −1 for one that is not in the table. */
  find(text: string, at: number): number {
    const guess = this.quoted[this.next];
    if (guess !== undefined && text.startsWith(guess, at)) {
      this.end = at + guess.length;
      const found = this.next;
      this.next = found + 1 === this.quoted.length ? 0 : found + 1;
      return found;
    }
    const close = text.indexOf('"', at);
    const found = close < 0 ? undefined : this.index.get(text.slice(at, close));
    if (found === undefined) return -1;
    this.end = close + 1;
    this.next = found + 1 === this.quoted.length ? 0 : found + 1;
    return found;
  }
}

function meterIds(plan: ColumnPlan): readonly string[] {
  return plan.meters.map(({ id }) => id);
}

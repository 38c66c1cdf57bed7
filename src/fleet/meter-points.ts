import { TICKS_PER_UNIT } from '../values/ticks.js';

/**
 * The readings of one meter of one machine, in the order of days and values, without allocating: the little of a track that last
 * doings and one reading can hold (docs/meaning.md §2).
 */
export class MeterPoints {
  count = 0;
  private readonly days: Int32Array;
  private readonly totals: Float64Array;

  constructor(capacity: number) {
    this.days = new Int32Array(capacity);
    this.totals = new Float64Array(capacity);
  }

  clear(): void {
    this.count = 0;
  }

  /** Puts a reading in its place. `shown`: in the meter's unit. */
  add(day: number, shown: number): void {
    const total = Math.round(shown * TICKS_PER_UNIT);
    const { days, totals } = this;
    let at = this.count;
    for (; at > 0; at -= 1) {
      const before = days[at - 1] ?? 0;
      if (before < day || (before === day && (totals[at - 1] ?? 0) <= total)) break;
      days[at] = before;
      totals[at] = totals[at - 1] ?? 0;
    }
    days[at] = day;
    totals[at] = total;
    this.count += 1;
  }

  /** Whether all of them count: none falls, and on an hour meter none rose faster than time passed. */
  agree(ticksPerDay: number | null): boolean {
    const { days, totals, count } = this;
    let least = Infinity;
    for (let i = 0; i < count; i += 1) {
      const total = totals[i] ?? 0;
      if (i > 0 && total < (totals[i - 1] ?? 0)) return false;
      if (ticksPerDay === null) continue;
      const level = total - ticksPerDay * (days[i] ?? 0);
      if (level > least + ticksPerDay) return false;
      if (level < least) least = level;
    }
    return true;
  }

  /** The last total; NaN without one. */
  last(): number {
    return this.count === 0 ? Number.NaN : (this.totals[this.count - 1] ?? Number.NaN);
  }

  /** The last total not later than a day; NaN if there is none. */
  at(day: number): number {
    let [low, high] = [0, this.count];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.days[middle] ?? 0) <= day) low = middle + 1;
      else high = middle;
    }
    return low === 0 ? Number.NaN : (this.totals[low - 1] ?? Number.NaN);
  }

  /** The day of the first total at a point or beyond it; beyond it, if `strict`. `otherwise` if none is. */
  reached(point: number, strict: boolean, otherwise: number): number {
    let [low, high] = [0, this.count];
    while (low < high) {
      const middle = (low + high) >> 1;
      const total = this.totals[middle] ?? 0;
      if (strict ? total > point : total >= point) high = middle;
      else low = middle + 1;
    }
    return low === this.count ? otherwise : (this.days[low] ?? otherwise);
  }
}

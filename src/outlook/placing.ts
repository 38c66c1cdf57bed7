/**
 * The search behind bundling: which of given visits each task goes to, so that least is opened up, and then least life thrown away.
 */

/** A task as the search sees it. */
export interface Placeable {
  readonly from: number;
  readonly to: number;
  readonly opens: readonly string[];
}

/** Task (by its index) → the point of its visit, with what the plan costs. */
export interface Placing {
  readonly opening: number;
  readonly thrownAway: number;
  readonly at: readonly number[];
}

/** Steps that the search may still take; shared by all searches of one bundling. */
export interface Budget {
  left: number;
}

/**
 * Depth first with bounds, the tasks with the fewest choices first, the latest visit first. Owns the state of one search.
 *
 * INVARIANT: `opened` counts, for each visit, the tasks placed there that open a thing up.
 */
export class PlacingSearch {
  private readonly choices: readonly (readonly number[])[];
  private readonly order: readonly number[];
  /** The least life that the tasks from each depth on throw away, each on its latest visit. */
  private readonly least: readonly number[];
  private readonly opened: readonly Map<string, number>[];
  private readonly at: number[];

  constructor(
    private readonly tasks: readonly Placeable[],
    private readonly visits: readonly number[],
    private readonly cost: ReadonlyMap<string, number>,
    private readonly budget: Budget,
    private best: Placing | null,
  ) {
    this.choices = tasks.map(({ from, to }) => visits.flatMap((at, visit) => (at >= from && at <= to ? [visit] : [])).reverse());
    this.order = tasks.map((_, index) => index).sort((a, b) => (this.choices[a]?.length ?? 0) - (this.choices[b]?.length ?? 0) || a - b);
    const least = [0];
    for (const index of [...this.order].reverse()) least.unshift((least[0] ?? 0) + this.waste(index, this.choices[index]?.[0] ?? 0));
    this.least = least;
    this.opened = visits.map(() => new Map<string, number>());
    this.at = tasks.map(() => 0);
  }

  /** The best placing, of those here and the one to beat; `proved` is false when the budget ran out. */
  run(): { readonly best: Placing | null; readonly proved: boolean } {
    const proved = this.descend(0, 0, 0);
    return { best: proved ? this.best : (this.best ?? this.latest()), proved };
  }

  private descend(depth: number, opening: number, thrown: number): boolean {
    this.budget.left -= 1;
    if (this.budget.left < 0) return false;
    if (!this.canBeat(opening, thrown + (this.least[depth] ?? 0))) return true;
    const index = this.order[depth];
    if (index === undefined) {
      this.best = { opening, thrownAway: thrown, at: [...this.at] };
      return true;
    }
    for (const visit of this.choices[index] ?? []) {
      const more = this.open(index, visit);
      const fine = this.descend(depth + 1, opening + more, thrown + this.waste(index, visit));
      this.close(index, visit);
      if (!fine) return false;
    }
    return true;
  }

  private canBeat(opening: number, thrown: number): boolean {
    if (this.best === null || opening < this.best.opening) return true;
    return opening === this.best.opening && thrown < this.best.thrownAway;
  }

  private waste(index: number, visit: number): number {
    const to = this.tasks[index]?.to ?? 0;
    return to - (this.visits[visit] ?? to);
  }

  /** Places a task; what is opened up for it alone. */
  private open(index: number, visit: number): number {
    this.at[index] = this.visits[visit] ?? 0;
    const opened = this.opened[visit];
    let more = 0;
    for (const what of this.tasks[index]?.opens ?? []) {
      const so = opened?.get(what) ?? 0;
      if (so === 0) more += this.cost.get(what) ?? 0;
      opened?.set(what, so + 1);
    }
    return more;
  }

  private close(index: number, visit: number): void {
    const opened = this.opened[visit];
    for (const what of this.tasks[index]?.opens ?? []) opened?.set(what, (opened.get(what) ?? 1) - 1);
  }

  /** Out of steps before any plan was found: every task on its latest visit is still a plan. */
  private latest(): Placing {
    for (const opened of this.opened) opened.clear();
    let [opening, thrownAway] = [0, 0];
    for (const index of this.order) {
      const visit = this.choices[index]?.[0] ?? 0;
      opening += this.open(index, visit);
      thrownAway += this.waste(index, visit);
    }
    return { opening, thrownAway, at: [...this.at] };
  }
}

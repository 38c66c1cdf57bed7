/// <reference lib="dom" />
/**
 * What the screens of the field page share: the machine, its history with what was written on this device, and the moment.
 */
import type { Assessment, Entry, Intent, Moment, Names, RuleGraph, Timeline } from '../../../engine.js';
import { assessTimeline, namesOf, readTimeline, validateEntry } from '../../../engine.js';
import { formatDate } from '../../../values/civil.js';
import { formatTime } from '../../../values/moment.js';
import { latestTime, newEntryId } from '../../logbook/entry-id.js';
import type { Draft } from '../../logbook/plan-append.js';
import { deviceChance, deviceNow } from './device-clock.js';
import type { DeviceShelf } from './device-shelf.js';
import { type Kept, linesOf, notHandedOver, readKept, unite, withKept } from './kept-entries.js';
import { type WorkPlan, intentOf, readWorkPlan } from './work-plan.js';

/** What became of something that was to be written down. */
export type Written = { readonly ok: true; readonly entry: Entry } | { readonly ok: false; readonly problem: string };

/** What is due, and the history that it was found in. */
export interface Asked {
  readonly timeline: Timeline;
  readonly assessment: Assessment;
}

/** Owns the state of one open page. */
export class Field {
  readonly names: Names;
  /** Entries on the device that could not be read. */
  readonly broken: number;
  /** False once the device has refused to keep something. */
  keeps = true;
  plan: WorkPlan;
  private kept: Kept;
  private readonly watchers: (() => void)[] = [];

  constructor(
    readonly graph: RuleGraph,
    private readonly logbook: readonly Entry[],
    private readonly shelf: DeviceShelf,
  ) {
    this.names = namesOf(graph);
    const read = readKept(shelf.get('entries'));
    this.kept = read.kept;
    this.broken = read.broken;
    this.plan = readWorkPlan(shelf.get('plan'), graph, this.entries);
    shelf.onChange(() => {
      this.kept = unite(this.kept, readKept(shelf.get('entries')).kept);
      this.changed();
    });
  }

  get entries(): readonly Entry[] {
    return withKept(this.logbook, this.kept);
  }

  get waiting(): readonly Entry[] {
    return notHandedOver(this.kept, this.logbook);
  }

  get waitingLines(): string {
    return linesOf(this.waiting);
  }

  now(): Moment {
    return deviceNow();
  }

  assess(extra: readonly Entry[] = [], intent: Intent = intentOf(this.plan)): Assessment {
    return this.ask(extra, intent).assessment;
  }

  /** As `assess`, with the history that was laid out for it. */
  ask(extra: readonly Entry[] = [], intent: Intent = intentOf(this.plan)): Asked {
    const now = this.now();
    const timeline = readTimeline([...this.entries, ...extra], this.graph, now);
    return { timeline, assessment: assessTimeline(this.graph, timeline, now, { intent }) };
  }

  /** Gives a draft an id and keeps it; a draft without a day happened now. */
  write(draft: LooseEntry): Written {
    const read = this.complete(draft);
    if (read.ok) this.keep({ entries: [read.entry], handedOver: [] });
    return read;
  }

  /** The entry that a draft would become, without keeping it. */
  complete(draft: LooseEntry): Written {
    const now = this.now();
    const at = draft.on === undefined && now.minute !== null ? { at: formatTime(now.minute) } : {};
    const { id } = newEntryId(deviceChance, latestTime(this.entries.map((entry) => entry.id)));
    const by = this.shelf.get('by') ?? '';
    const read = validateEntry({ on: formatDate(now.day), ...at, ...(by === '' ? {} : { by }), ...draft, id });
    if (read.kind === 'entry') return { ok: true, entry: read.entry };
    return { ok: false, problem: read.problems.map(({ path, message }) => `${path === '' ? 'It' : path} should be ${message}`).join('; ') };
  }

  handOver(ids: readonly string[]): void {
    this.keep({ entries: [], handedOver: ids });
  }

  setPlan(plan: WorkPlan): void {
    this.plan = plan;
    this.remember('plan', JSON.stringify(plan));
    this.changed();
  }

  recall(name: string): string | null {
    return this.shelf.get(name);
  }

  remember(name: string, text: string | null): void {
    this.keeps = this.shelf.set(name, text) && this.keeps;
  }

  watch(act: () => void): void {
    this.watchers.push(act);
  }

  changed(): void {
    for (const act of this.watchers) act();
  }

  /** What another window has kept meanwhile is taken in before anything is written over it. */
  private keep(more: Kept): void {
    this.kept = unite(unite(this.kept, readKept(this.shelf.get('entries')).kept), more);
    this.remember('entries', JSON.stringify(this.kept));
    this.changed();
  }
}

/** A draft whose day may still be missing: then it happened now. */
export type LooseEntry = LooseOf<Draft>;
type LooseOf<E> = E extends Draft ? Omit<E, 'on'> & { readonly on?: string } : never;

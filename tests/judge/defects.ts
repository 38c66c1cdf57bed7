/** Defects: open until an entry closes them or a task that mends them is done. */
import type { When } from './calendar.js';
import { remembered } from './remembered.js';
import { whenOf, type World } from './world.js';

export interface DefectState {
  readonly open: boolean;
  /** The class last noted while it is open. */
  readonly class: string | null;
  /** The entry that noted the class, or opened it. */
  readonly by: { readonly id: string; readonly when: When } | null;
  /** The newest entry that makes it so. */
  readonly since: When | null;
}

/** Whether an open defect is of a class that is asked for; one that nobody noted may be any that the defect has. */
export function ofClass(
  world: World,
  defect: string,
  state: DefectState,
  askedFor: (name: string) => boolean,
): 'true' | 'false' | 'unknown' {
  const all = world.graph.defects.find(({ id }) => id === defect)?.classes.map(({ name }) => name) ?? [];
  const possible = state.class === null ? all : [state.class];
  if (possible.every((name) => !askedFor(name))) return 'false';
  return possible.every(askedFor) ? 'true' : 'unknown';
}

type Step = { readonly id: string; readonly when: When; readonly opens: boolean; readonly class: string | null };

export const defectState = remembered((world: World, defect: string): DefectState => {
  let state: DefectState = { open: false, class: null, by: null, since: null };
  const all = steps(world, defect);
  for (const day of [...new Set(all.map(({ when }) => when.day))].sort((a, b) => a - b)) {
    for (const step of lineUp(
      all.filter(({ when }) => when.day === day),
      state.open,
    )) {
      if (!step.opens) {
        if (state.open) state = { open: false, class: null, by: null, since: step.when };
      } else if (!state.open || step.class !== null) {
        state = { open: true, class: step.class, by: { id: step.id, when: step.when }, since: step.when };
      }
    }
  }
  return state;
});

/** On one day without minutes: what was off began before it ended, what was on ended before it began again. */
export function lineUp<T extends { readonly id: string; readonly when: When; readonly opens: boolean }>(
  day: readonly T[],
  wasOpen: boolean,
): readonly T[] {
  const place = (step: T): number => step.when.minute ?? (step.opens === wasOpen ? 2000 : -1);
  const rank = (step: T): number => (step.opens === wasOpen ? 1 : 0);
  return [...day].sort((a, b) => place(a) - place(b) || rank(a) - rank(b) || (a.id < b.id ? -1 : 1));
}

function steps(world: World, defect: string): readonly Step[] {
  const mending = world.graph.tasks.filter(({ mends }) => mends.includes(defect)).map(({ id }) => id);
  const closing = world.graph.tasks
    .filter(({ id, covers }) => mending.includes(id) || covers.some((each) => mending.includes(each)))
    .map(({ id }) => id);
  return world.entries.flatMap((entry): readonly Step[] => {
    const step = { id: entry.id, when: whenOf(entry) };
    if (entry.kind === 'defect-opened' && entry.defect === defect) return [{ ...step, opens: true, class: entry.class ?? null }];
    if (entry.kind === 'defect-closed' && entry.defect === defect) return [{ ...step, opens: false, class: null }];
    return entry.kind === 'done' && entry.tasks.some((task) => closing.includes(task)) ? [{ ...step, opens: false, class: null }] : [];
  });
}

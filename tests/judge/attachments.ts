/** When an attachment was on (§6). */
import { inOrder, type When } from './calendar.js';
import { outings } from './outings.js';
import { remembered } from './remembered.js';
import { whenOf, type World } from './world.js';

interface Step {
  readonly id: string;
  readonly when: When;
  readonly says: 'on' | 'off' | 'with' | 'without';
}

/** A time during which it was on. */
export interface Spell {
  readonly begin: { readonly id: string; readonly when: When };
  readonly end: { readonly id: string; readonly when: When } | null;
}

/** The times during which it was on: by entries that say so, and by outings with it where none had. */
export const spellsOn = remembered((world: World, attachment: string): readonly Spell[] => {
  const steps: readonly Step[] = [
    ...world.entries.flatMap((entry): readonly Step[] =>
      (entry.kind === 'attached' || entry.kind === 'detached') && entry.attachment === attachment
        ? [{ id: entry.id, when: whenOf(entry), says: entry.kind === 'attached' ? 'on' : 'off' }]
        : [],
    ),
    ...outings(world).map((work): Step => ({
      id: work.id,
      when: work.when,
      says: work.attachments.includes(attachment) ? 'with' : 'without',
    })),
  ];
  const spells: Spell[] = [];
  let open: { readonly begin: Step; readonly noted: boolean } | null = null;
  for (const day of [...new Set(steps.map(({ when }) => when.day))].sort((a, b) => a - b)) {
    for (const step of lineUp(
      steps.filter(({ when }) => when.day === day),
      open !== null,
    )) {
      const ends: boolean = open !== null && (step.says === 'off' || (!open.noted && (step.says === 'on' || step.says === 'without')));
      if (open !== null && ends) {
        spells.push({ begin: open.begin, end: step });
        open = null;
      }
      if (open === null && (step.says === 'on' || step.says === 'with')) open = { begin: step, noted: step.says === 'on' };
    }
  }
  return open === null ? spells : [...spells, { begin: open.begin, end: null }];
});

/** On one day without minutes: put on, used, taken off; one that was on already and was both taken off and put on was put on last. */
function lineUp(day: readonly Step[], wasOn: boolean): readonly Step[] {
  const turned = wasOn && day.some(({ says }) => says === 'on') && day.some(({ says }) => says === 'off');
  const place = ({ says, when }: Step): number => {
    if (when.minute !== null) return when.minute;
    if (says === 'on') return turned ? 2000 : -2;
    if (says === 'off') return turned ? -2 : 2000;
    return -1;
  };
  return [...day].sort((a, b) => place(a) - place(b) || (a.id < b.id ? -1 : 1));
}

/** Whether it was on when an outing began. */
export function wasOn(world: World, attachment: string, when: When, outing: string): boolean {
  const begun = { when, id: '' };
  const order = (at: { readonly when: When }): number => inOrder({ when: at.when, id: '' }, begun);
  return spellsOn(world, attachment).some(({ begin, end }) => order(begin) <= 0 && (end === null || (end.id !== outing && order(end) > 0)));
}

/// <reference lib="dom" />
/**
 * The work that is intended today, as the owner sets it on the page.
 */
import type { Entry, Intent, RuleGraph } from '../../../engine.js';
import { listed } from '../../../base/listed.js';
import { inSentence } from '../../../render/count-in-words.js';
import { numberText } from '../../../values/number-text.js';
import { element } from '../view/element.js';
import { tickBox } from './controls.js';
import type { Field } from './field.js';

export interface WorkPlan {
  readonly works: boolean;
  readonly hours: number;
  readonly duties: readonly string[];
  readonly attachments: readonly string[];
}

const USUAL_HOURS = 3;

/** What was set last time; else work for three hours with what is on the machine. */
export function readWorkPlan(text: string | null, graph: RuleGraph, entries: readonly Entry[]): WorkPlan {
  const usual: WorkPlan = { works: true, hours: USUAL_HOURS, duties: [], attachments: attachedNow(entries) };
  const kept = text === null ? {} : (JSON.parse(text) as Partial<WorkPlan>);
  const known = (things: readonly { readonly id: string }[], ids: unknown): readonly string[] =>
    things.map(({ id }) => id).filter((id) => Array.isArray(ids) && ids.includes(id));
  return {
    works: kept.works ?? usual.works,
    hours: typeof kept.hours === 'number' && kept.hours > 0 && kept.hours <= 24 ? kept.hours : usual.hours,
    duties: known(graph.duties, kept.duties ?? usual.duties),
    attachments: known(graph.attachments, kept.attachments ?? usual.attachments),
  };
}

function attachedNow(entries: readonly Entry[]): readonly string[] {
  const on = new Set<string>();
  const when = (entry: Entry): string => `${entry.on} ${entry.at ?? ''}`;
  const ordered = [...entries].sort((a, b) => (when(a) < when(b) ? -1 : when(a) > when(b) ? 1 : 0));
  for (const entry of ordered) {
    if (entry.kind === 'attached') on.add(entry.attachment);
    if (entry.kind === 'detached') on.delete(entry.attachment);
  }
  return [...on];
}

/** The plan as the engine takes it. */
export function intentOf({ works, hours, duties, attachments }: WorkPlan): Intent {
  return works ? { outing: { hours, duties, attachments } } : {};
}

/** `3 h in mowing growth above knee height, with the Sedge 150 flail mower`. */
export function planInWords({ works, hours, duties, attachments }: WorkPlan, { names }: Field): string {
  if (!works) return 'No work today';
  const inDuties = duties.length === 0 ? '' : ` in ${listed(duties.map((id) => inSentence(names.duties[id] ?? id)))}`;
  const withThings =
    attachments.length === 0
      ? ''
      : ` with the ${listed(
          attachments.map((id) => names.attachments[id] ?? id),
          'and the',
        )}`;
  return `${numberText(hours)} h of work${inDuties}${withThings}`;
}

/** The form in which it is set. */
export function workPlanForm(field: Field): HTMLElement {
  const set = (change: Partial<WorkPlan>): void => field.setPlan({ ...field.plan, ...change });
  const { plan, graph } = field;
  const hours = element('input', {
    type: 'number',
    id: 'plan-hours',
    min: 0.25,
    max: 24,
    step: 0.25,
    value: plan.hours,
    inputmode: 'decimal',
  });
  hours.addEventListener('change', () => set({ hours: Math.min(24, Math.max(0.25, Number(hours.value) || USUAL_HOURS)) }));
  const choose = (key: 'duties' | 'attachments', id: string, on: boolean): void =>
    set({ [key]: on ? [...field.plan[key], id] : field.plan[key].filter((each) => each !== id) });
  const choices = (key: 'duties' | 'attachments', legend: string): HTMLElement | null =>
    graph[key].length === 0
      ? null
      : element(
          'fieldset',
          {},
          element('legend', {}, legend),
          ...graph[key].map(({ id, title }) => tickBox(title, plan[key].includes(id), (on) => choose(key, id, on))),
        );
  return element(
    'div',
    { class: 'plan-form' },
    tickBox('I mean to work with it today', plan.works, (works) => set({ works })),
    element('label', { class: 'field', for: 'plan-hours' }, 'For about how many hours'),
    hours,
    choices('attachments', 'With'),
    choices('duties', 'In'),
  );
}

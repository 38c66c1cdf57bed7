/// <reference lib="dom" />
/**
 * What happened to the machine, besides work: an event of the schedule, fuel, an attachment on or off, a defect mended, storage.
 */
import type { Timeline } from '../../../engine.js';
import { notedEvents } from '../../../engine.js';
import { safeText } from '../../../render/safe-text.js';
import { choiceField, textField } from './controls.js';
import type { Field, LooseEntry } from './field.js';
import { filled } from './filled.js';
import { meterFields } from './meter-fields.js';
import type { QuickForm } from './write-screen.js';

/** A form whose choices are what can happen to the machine as it stands: what is on can come off, what is open can be mended. */
export function happeningForm(field: Field): QuickForm {
  const choices = choicesFor(field, field.ask().timeline);
  const what = choiceField('What happened', [['', 'Choose'], ...choices.map(([words], index) => [String(index), words] as const)]);
  const meters = meterFields(field);
  const note = textField('Note', {});
  return {
    root: [what.root, meters.root, note.root],
    draft: () => {
      const chosen = what.select.value === '' ? undefined : choices[Number(what.select.value)];
      if (chosen === undefined) return 'Choose what happened.';
      const words = note.input.value.trim();
      return { ...chosen[1], ...filled('meters', meters.values()), ...(words === '' ? {} : { note: words }) };
    },
  };
}

function choicesFor({ graph }: Field, timeline: Timeline): readonly (readonly [words: string, draft: LooseEntry])[] {
  const lasts = (spells: readonly { readonly end: unknown }[] | undefined): boolean => spells?.at(-1)?.end === null;
  const open = graph.defects.filter(({ id }) => lasts(timeline.defects.get(id)));
  return [
    ...notedEvents(graph).map(({ id, title }) => [safeText(title), { kind: 'event', event: id }] as const),
    ['Refuelled', { kind: 'refuelled' }],
    ...graph.attachments.map(({ id, title }) =>
      lasts(timeline.attachments.get(id))
        ? ([`Taken off: ${safeText(title)}`, { kind: 'detached', attachment: id }] as const)
        : ([`Put on: ${safeText(title)}`, { kind: 'attached', attachment: id }] as const),
    ),
    ...open.map(({ id, title }) => [`Mended: ${safeText(title)}`, { kind: 'defect-closed', defect: id }] as const),
    lasts(timeline.storage)
      ? ['Taken out of storage', { kind: 'storage', phase: 'ends' }]
      : ['Put into storage', { kind: 'storage', phase: 'begins' }],
  ];
}

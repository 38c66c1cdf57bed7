/// <reference lib="dom" />
/**
 * Quick entries: hours, work done, a finding, a top-up, a gauge, anything else that happened. Each is kept on the device at once.
 */
import { assertNever } from '../../../base/assert-never.js';
import { entryInWords } from '../../../render/entry-in-words.js';
import { button, element } from '../view/element.js';
import { choiceField, decimalOf, textField, tickBox } from './controls.js';
import type { Field, LooseEntry } from './field.js';
import { filled } from './filled.js';
import { happeningForm } from './happening-form.js';
import { meterFields } from './meter-fields.js';
import { readingField, type ReadingValue } from './reading-fields.js';
import type { Screen } from './screen.js';

type Kind = 'hours' | 'done' | 'finding' | 'top-up' | 'gauge' | 'happening';

const KINDS: readonly (readonly [Kind, string])[] = [
  ['hours', 'Hours'],
  ['done', 'Work done'],
  ['finding', 'Finding'],
  ['top-up', 'Top-up'],
  ['gauge', 'Gauge'],
  ['happening', 'Happening'],
];

/** A form with the entry that it makes, or what is missing. */
export interface QuickForm {
  readonly root: readonly HTMLElement[];
  readonly draft: () => LooseEntry | string;
}

export interface WriteScreen extends Screen {
  /** Shows the form for work done with this task ticked. */
  readonly begin: (task: string) => void;
}

export function writeScreen(field: Field): WriteScreen {
  const form = element('div', { class: 'quick' });
  const said = element('p', { class: 'said', role: 'status' });
  let kind: Kind = 'hours';
  const open = (next: Kind, task?: string): void => {
    kind = next;
    for (const each of kinds) each.setAttribute('aria-pressed', String(each.dataset['kind'] === kind));
    const made = formOf(kind, field, task);
    const when = whenFields();
    const by = textField('By', { value: field.recall('by') ?? '', autocomplete: 'name' });
    by.input.addEventListener('change', () => field.remember('by', by.input.value.trim()));
    const save = button(
      'Keep it',
      () => {
        const draft = made.draft();
        const written = typeof draft === 'string' ? ({ ok: false, problem: draft } as const) : field.write({ ...draft, ...when.values() });
        said.textContent = written.ok ? `Kept: ${entryInWords(written.entry, field.names)}` : written.problem;
        said.classList.toggle('wrong', !written.ok);
        if (written.ok) open(kind);
      },
      { class: 'wide main' },
    );
    form.replaceChildren(
      ...made.root,
      element('details', { class: 'more' }, element('summary', {}, 'When, and by whom'), ...when.root, by.root),
      save,
    );
  };
  const kinds = KINDS.map(([each, words]) => button(words, () => open(each), { 'data-kind': each, 'aria-pressed': 'false' }));
  open(kind);
  const choose = element('div', { class: 'kinds', role: 'group', 'aria-label': 'What to write down' }, ...kinds);
  return {
    id: 'write',
    title: 'Write down',
    tab: 'Write',
    body: [choose, said, form],
    refresh: () => undefined,
    begin: (task) => open('done', task),
  };
}

function formOf(kind: Kind, field: Field, task?: string): QuickForm {
  switch (kind) {
    case 'hours':
      return hoursForm(field);
    case 'done':
      return doneForm(field, task);
    case 'finding':
      return findingForm(field);
    case 'top-up':
      return topUpForm(field);
    case 'gauge':
      return gaugeForm(field);
    case 'happening':
      return happeningForm(field);
    default:
      return assertNever(kind);
  }
}

/** Left empty, an entry happened now. */
function whenFields(): { readonly root: readonly HTMLElement[]; readonly values: () => { readonly on?: string; readonly at?: string } } {
  const on = textField('On which day, if not today', { type: 'date' });
  const at = textField('At what time, if it is known', { type: 'time' });
  return {
    root: [on.root, at.root],
    values: () => ({ ...(on.input.value === '' ? {} : { on: on.input.value }), ...(at.input.value === '' ? {} : { at: at.input.value }) }),
  };
}

function hoursForm(field: Field): QuickForm {
  const meters = meterFields(field);
  return {
    root: [meters.root],
    draft: () => {
      const values = { ...meters.values() };
      return Object.keys(values).length === 0 ? 'Type what a meter shows.' : { kind: 'reading', meters: values };
    },
  };
}

function doneForm(field: Field, first?: string): QuickForm {
  const chosen = new Set(first === undefined ? [] : [first]);
  const meters = meterFields(field);
  const note = textField('Note', {});
  const list = element('div', { class: 'choices' });
  const search = textField('Find a task', { type: 'search' });
  const show = (): void => {
    const words = search.input.value.trim().toLowerCase();
    const found = field.graph.tasks.filter(({ id, title }) => chosen.has(id) || title.toLowerCase().includes(words));
    const ordered = [...found.filter(({ id }) => chosen.has(id)), ...found.filter(({ id }) => !chosen.has(id))];
    list.replaceChildren(
      ...ordered.map(({ id, title }) =>
        tickBox(title, chosen.has(id), (on) => {
          if (on) chosen.add(id);
          else chosen.delete(id);
        }),
      ),
    );
  };
  search.input.addEventListener('input', show);
  show();
  return {
    root: [search.root, list, meters.root, note.root],
    draft: () => {
      if (chosen.size === 0) return 'Tick what was done.';
      return {
        kind: 'done',
        tasks: [...chosen],
        ...filled('meters', meters.values()),
        ...(note.input.value.trim() === '' ? {} : { note: note.input.value.trim() }),
      };
    },
  };
}

function findingForm(field: Field): QuickForm {
  const kinds = field.graph.defects.flatMap(({ id, title, classes }): readonly (readonly [string, string])[] =>
    classes.length === 0 ? [[id, title]] : classes.map((each) => [`${id} ${each.name}`, `${title}: ${each.title ?? each.name}`]),
  );
  const defect = choiceField('What it is', [['', 'Something else'], ...kinds]);
  const text = textField('In words', {});
  return {
    root: [defect.root, text.root],
    draft: () => {
      const words = text.input.value.trim();
      const [id = '', name] = defect.select.value.split(' ');
      if (id === '') return words === '' ? 'Say what was found.' : { kind: 'finding', text: words };
      return {
        kind: 'defect-opened',
        defect: id,
        ...(name === undefined ? {} : { class: name }),
        ...(words === '' ? {} : { note: words }),
      };
    },
  };
}

function topUpForm(field: Field): QuickForm {
  const { dipsticks, supplies } = field.graph;
  const liquids = supplies.filter(({ unit }) => unit === 'L');
  const stick = choiceField('Measured by', [['', 'No dipstick'], ...dipsticks.map(({ id, title }) => [id, title] as const)]);
  const supply = choiceField('With', [['', 'Not said'], ...liquids.map(({ id, title }) => [id, title] as const)]);
  const litres = textField('Litres', { inputmode: 'decimal' });
  return {
    root: [stick.root, litres.root, supply.root],
    draft: () => {
      const amount = decimalOf(litres.input.value);
      if (amount === null || amount <= 0) return 'Say how many litres went in.';
      return {
        kind: 'topped-up',
        litres: amount,
        ...(stick.select.value === '' ? {} : { dipstick: stick.select.value }),
        ...(supply.select.value === '' ? {} : { supply: supply.select.value }),
      };
    },
  };
}

function gaugeForm(field: Field): QuickForm {
  const { gauges, dipsticks } = field.graph;
  const instruments = [
    ...gauges.map(({ id, title }) => ({ is: 'gauge' as const, id, title })),
    ...dipsticks.map(({ id, title }) => ({ is: 'dipstick' as const, id, title })),
  ];
  const which = choiceField(
    'Which',
    instruments.map(({ id, title }) => [id, title] as const),
  );
  const place = element('div', {});
  let value: ReadingValue | null = null;
  const show = (): void => {
    value = null;
    const chosen = instruments.find(({ id }) => id === which.select.value);
    place.replaceChildren(...(chosen === undefined ? [] : [readingField(field, chosen, null, (read) => (value = read))]));
  };
  which.select.addEventListener('change', show);
  show();
  return {
    root: [which.root, place],
    draft: () => (value === null ? 'Say what it reads.' : { kind: 'reading', readings: { [which.select.value]: value } }),
  };
}

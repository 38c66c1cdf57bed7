/**
 * What an entry of the logbook says, in one line.
 */
import { assertNever } from '../base/assert-never.js';
import type { Explanation, RuleFacts } from '../explain/explanation.js';
import type { Entry } from '../history/entry.js';
import { numberText } from '../values/number-text.js';
import { quoted, titleOf } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import { listed } from '../base/listed.js';
import { asSentence, counted } from './count-in-words.js';
import { safeText } from './safe-text.js';

/** What a reader is after: of an entry that says much, only what bears on these ids is told. */
export type About = ReadonlySet<string>;

/** The ids that an explanation is about: its task, what counts as it, and all that its rules speak of. */
export function aboutOf({ task, rule, gate, names }: Explanation): About {
  const about = new Set([task.id, ...task.countedBy, ...(task.comesAfter ?? []), ...task.reads.map(({ id }) => id)]);
  gather(
    [rule, gate].map((tree) => JSON.stringify(tree)),
    about,
  );
  // What was read by the task that asks is the reason for asking.
  if (rule !== null && asks(rule)) for (const id of [...Object.keys(names.gauges), ...Object.keys(names.dipsticks)]) about.add(id);
  return about;
}

function asks({ note, parts }: RuleFacts): boolean {
  return note?.is === 'asked' || parts.some(asks);
}

function gather(trees: readonly string[], into: Set<string>): void {
  for (const tree of trees) for (const [, id = ''] of tree.matchAll(/"(?:meter|id|task|dipstick|instrument)":"([^"]+)"/g)) into.add(id);
}

/**
 * `Done: change the engine oil and filter. Engine 1200 h.` The owner's own note follows in quotes.
 *
 * With `about`, other tasks, meters and readings of the entry are left out.
 */
export function entryInWords(entry: Entry, names: Titles, about: About | null = null): string {
  const noted = [...meters(entry, names, about), ...readings(entry, names, about)];
  const said = [happening(entry, names, about), ...(noted.length > 0 ? [asSentence(listed(noted))] : [])].filter((part) => part !== '');
  const note = entry.note === undefined ? '' : ` “${safeText(entry.note)}”`;
  return `${(said.length === 0 ? ['Other work was done'] : said).map((part) => `${part}.`).join(' ')}${note}`;
}

function meters(entry: Entry, names: Titles, about: About | null): readonly string[] {
  return Object.entries(entry.meters ?? {})
    .filter(([meter]) => about === null || about.has(meter))
    .map(([meter, value]) => `${safeText(meter)} ${shown(value, meter, names)}`);
}

function shown(value: number, meter: string, names: Titles): string {
  return `${numberText(value)} ${safeText(names.meters[meter]?.unit ?? 'h')}`;
}

function readings(entry: Entry, names: Titles, about: About | null): readonly string[] {
  return Object.entries(entry.readings ?? {})
    .filter(([id]) => about === null || about.has(id))
    .map(([id, value]) => {
      const title = titleOf(names.gauges[id]?.title ?? names.dipsticks[id]?.title, id);
      if (typeof value === 'string') return `${title} ${value.replace('-', ' ')}`;
      const unit = names.gauges[id]?.unit;
      return unit === undefined
        ? `${title} ${numberText(value * 100)} % of low to full`
        : `${title} ${numberText(value)} ${safeText(unit)}`;
    });
}

function happening(entry: Entry, names: Titles, about: About | null): string {
  switch (entry.kind) {
    case 'machine':
      return machine(entry);
    case 'reading':
      return '';
    case 'done':
      return doneInWords(entry.tasks, names, about);
    case 'outing':
      return outing(entry, names);
    case 'finding':
      return `Found: ${safeText(entry.text)}`;
    case 'defect-opened':
      return `Found ${quoted(names.defects[entry.defect], entry.defect)}${entry.class === undefined ? '' : ` as ${safeText(entry.class)}`}`;
    case 'defect-closed':
      return `Mended ${quoted(names.defects[entry.defect], entry.defect)}`;
    case 'event':
      return `Happened: ${titleOf(names.events[entry.event], entry.event)}`;
    case 'attached':
      return `Put on: ${safeText(names.attachments[entry.attachment] ?? entry.attachment)}`;
    case 'detached':
      return `Taken off: ${safeText(names.attachments[entry.attachment] ?? entry.attachment)}`;
    case 'meter-replaced':
      return `New meter for ${safeText(entry.meter)}: the old one showed ${shown(entry.final, entry.meter, names)}, the new one ${shown(entry.initial, entry.meter, names)}`;
    case 'stands':
      return `Left standing: ${listed(Object.entries(entry.positions).map(([part, position]) => `${safeText(part)} ${safeText(position)}`))}`;
    case 'storage':
      return entry.phase === 'begins' ? 'Put into storage' : 'Taken out of storage';
    case 'refuelled':
      return entry.litres === undefined ? 'Refuelled' : `Refuelled ${numberText(entry.litres)} L`;
    case 'topped-up':
      return `Topped up ${numberText(entry.litres)} L${entry.dipstick === undefined ? '' : ` by the ${titleOf(names.dipsticks[entry.dipstick]?.title, entry.dipstick)}`}`;
    case 'stated':
      return stated(entry, names);
    case 'void':
      return `Voids ${safeText(entry.entry)}`;
    case 'confirm':
      return `Confirms ${safeText(entry.entry)}`;
    default:
      return assertNever(entry);
  }
}

function machine({ model, serial, inService }: Extract<Entry, { kind: 'machine' }>): string {
  const plate = [...(model === undefined ? [] : [`“${safeText(model)}”`]), ...(serial === undefined ? [] : [`serial ${serial}`])];
  const it = plate.length === 0 ? 'The machine' : `The machine, ${plate.join(', ')},`;
  return inService === undefined ? `${it} was taken over` : `${it} entered service on ${inService}`;
}

function doneInWords(tasks: readonly string[], names: Titles, about: About | null): string {
  const told = about === null ? tasks : tasks.filter((task) => about.has(task));
  if (told.length === 0) return '';
  const others = tasks.length - told.length;
  const beside = others === 0 ? '' : `, with ${counted(others, 'other task')}`;
  return `Done: ${told.map((task) => titleOf(names.tasks[task], task)).join('; ')}${beside}`;
}

function outing(entry: Extract<Entry, { kind: 'outing' }>, names: Titles): string {
  const times = entry.until === undefined ? '' : ` ${entry.at === undefined ? '' : `${entry.at} `}to ${entry.until}`;
  const hours = entry.hours === undefined ? '' : `, ${numberText(entry.hours)} h`;
  const duties = (entry.duties ?? []).map(
    ({ duty, hours: part }) => `${part === undefined ? '' : `${numberText(part)} h `}in ${titleOf(names.duties[duty], duty)}`,
  );
  const attachments = (entry.attachments ?? []).map((attachment) => `with the ${safeText(names.attachments[attachment] ?? attachment)}`);
  return `At work${times}${hours}${[...duties, ...attachments].map((part) => `, ${part}`).join('')}`;
}

function stated(entry: Extract<Entry, { kind: 'stated' }>, names: Titles): string {
  const by = entry.doneBy === undefined ? '' : ` by ${entry.doneBy}`;
  const at = Object.entries(entry.doneAt ?? {}).map(([meter, value]) => ` at about ${shown(value, meter, names)} of ${safeText(meter)}`);
  const words = entry.words === undefined ? '' : `: “${safeText(entry.words)}”`;
  return `The owner states that ${quoted(names.tasks[entry.task], entry.task)} was done${by}${at.join(' and')}${words}`;
}

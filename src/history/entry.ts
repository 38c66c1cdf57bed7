/**
 * What an owner records: the entries of a logbook, checked at the edge.
 *
 * Every entry has an id, the civil date it happened on and, where known, the local time. Any entry may carry meter values and
 * gauge or dipstick readings that were taken along with it. Nothing is ever erased: a mistake is voided by a later entry.
 *
 * The shape here is the source of `grammar/history-entry.schema.json`, and of the type.
 */
import { choice, either, list, map, type Members, number, object, oneOf, optional, text, type TypeOf, whole } from '../base/typed-shape.js';

const id = text({ least: 1, most: 120 });
// `__proto__` is no name: as a key it would reach into the object that holds it instead of naming anything.
const name = text({ least: 1, most: 160, forms: [/^(?!__proto__$)/], wanted: 'a name other than `__proto__`' });
const words = text({ most: 4000 });
/** A day that exists, from 0001-01-01 to 9999-12-31. */
const date = text({
  forms: [
    /^(?:(?:\d\d[2468][048]|\d\d[13579][26]|\d\d0[48]|[02468][048]00|[13579][26]00)-02-29|\d{4}-(?:(?:0[13578]|1[02])-(?:0[1-9]|[12]\d|3[01])|(?:0[469]|11)-(?:0[1-9]|[12]\d|30)|(?:02)-(?:0[1-9]|1\d|2[0-8])))$/,
    /^(?!0000)/,
  ],
  wanted: 'a day that exists, as YYYY-MM-DD',
});
const time = text({ forms: [/^([01]\d|2[0-3]):[0-5]\d$/], wanted: 'a time from 00:00 to 23:59, as HH:MM' });
// At most 1e10, so that sums of ticks (1/36000) stay exact.
const amount = number({ least: 0, most: 1e10 });

/** A gauge value in the gauge's unit; for a dipstick a share of the range from low (0) to full (1), or where it stood. */
const reading = either(number({ least: -1e9, most: 1e9 }), ['below-low', 'low', 'full', 'above-full']);

const common = {
  id,
  on: date,
  at: optional(time),
  by: optional(words),
  note: optional(words),
  /** Meter id → value shown, in the meter's unit. */
  meters: optional(map(name, amount)),
  /** Gauge or dipstick id → what it read. */
  readings: optional(map(name, reading)),
};

/* @__NO_SIDE_EFFECTS__ */
function entry<const K extends string, M extends Members>(kind: K, members: M) {
  return object({ kind: oneOf(kind), ...common, ...members });
}

/** The machine's birth certificate in this logbook. `inService` is left out when the machine was taken over without records. */
const machine = entry('machine', {
  model: optional(words),
  // Spelt out: a bundler takes it that reading `Number.MAX_SAFE_INTEGER` could do something, and would keep the shape where nobody asks for it.
  serial: optional(whole({ least: -9_007_199_254_740_991, most: 9_007_199_254_740_991 })),
  inService: optional(date),
});
const readingEntry = entry('reading', {});
const done = entry('done', {
  tasks: list(name, 1),
  /** Supply id → how much, in the supply's unit. */
  used: optional(map(name, amount)),
  minutes: optional(amount),
});
/** Work with the machine. `at` is the start; `hours` is the time at work, without it that from start to end. An outing with neither `until` nor `hours` is still under way.
 *  Where `until` is earlier than `at` and there is no `untilOn`, it ended on the next day. Meters and readings noted here were taken at its end. */
const outing = entry('outing', {
  until: optional(time),
  untilOn: optional(date),
  hours: optional(amount),
  /** Duty ids; with hours where only part of the outing was in that duty. */
  duties: optional(list(object({ duty: name, hours: optional(amount) }))),
  attachments: optional(list(name)),
  shift: optional(name),
});
const finding = entry('finding', { task: optional(name), text: words });
const defectOpened = entry('defect-opened', { defect: name, class: optional(name) });
const defectClosed = entry('defect-closed', { defect: name });
const event = entry('event', { event: name });
const attached = entry('attached', { attachment: name });
const detached = entry('detached', { attachment: name });
/** `final` is what the old meter last showed, `initial` what the new one shows when fitted. */
const meterReplaced = entry('meter-replaced', { meter: name, final: amount, initial: amount });
const stands = entry('stands', { positions: map(name, name) });
const storage = entry('storage', { phase: oneOf('begins', 'ends') });
const refuelled = entry('refuelled', { litres: optional(amount) });
const toppedUp = entry('topped-up', { dipstick: optional(name), supply: optional(name), litres: amount });
/** What an owner knows without a record: "done before 2025, at about 1,200 h". `on` is when it was stated. */
const stated = entry('stated', {
  task: name,
  /** The latest day by which it was done, as far as is known. */
  doneBy: optional(date),
  /** Meter id → about what the meter showed when it was done. */
  doneAt: optional(map(name, amount)),
  words: optional(words),
});
const voids = entry('void', { entry: id });
/** The owner says that a suspect reading is right. */
const confirms = entry('confirm', { entry: id });

/** Any entry of a logbook. */
export const entryShape = choice('kind', [
  machine,
  readingEntry,
  done,
  outing,
  finding,
  defectOpened,
  defectClosed,
  event,
  attached,
  detached,
  meterReplaced,
  stands,
  storage,
  refuelled,
  toppedUp,
  stated,
  voids,
  confirms,
]);

/** What an owner records: one of the kinds above. */
export type Entry = TypeOf<typeof entryShape>;
/** What kind of thing an entry records. */
export type EntryKind = Entry['kind'];
/** The entries of one kind. */
export type EntryOf<K extends EntryKind> = Extract<Entry, { kind: K }>;
/** The id of an entry, unique within its history. */
export type EntryId = string;

/**
 * What an owner records: the entries of a logbook, checked at the edge.
 *
 * Every entry has an id, the civil date it happened on and, where known, the local time. Any entry may carry meter values and
 * gauge or dipstick readings that were taken along with it. Nothing is ever erased: a mistake is voided by a later entry.
 *
 * The zod schema is the source of `grammar/history-entry.schema.json`.
 */
import * as z from 'zod/mini';

const id = z.string().check(z.minLength(1), z.maxLength(120));
// `__proto__` is no name: as a key it would reach into the object that holds it instead of naming anything.
const name = z.string().check(z.minLength(1), z.maxLength(160), z.regex(/^(?!__proto__$)/));
const words = z.string().check(z.maxLength(4000));
/** A day that exists, from 0001-01-01 to 9999-12-31. */
const date = z.string().check(z.iso.date(), z.regex(/^(?!0000)/));
const time = z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/));
// At most 1e10, so that sums of ticks (1/36000) stay exact.
const amount = z.number().check(z.nonnegative(), z.maximum(1e10));

/** A gauge value in the gauge's unit; for a dipstick a share of the range from low (0) to full (1), or where it stood. */
const reading = z.union([z.number().check(z.minimum(-1e9), z.maximum(1e9)), z.enum(['below-low', 'low', 'full', 'above-full'])]);

const common = {
  id,
  on: date,
  at: z.optional(time),
  by: z.optional(words),
  note: z.optional(words),
  /** Meter id → value shown, in the meter's unit. */
  meters: z.optional(z.record(name, amount)),
  /** Gauge or dipstick id → what it read. */
  readings: z.optional(z.record(name, reading)),
};

/** The machine's birth certificate in this logbook. `inService` is left out when the machine was taken over without records. */
const machine = z.object({
  kind: z.literal('machine'),
  ...common,
  model: z.optional(words),
  serial: z.optional(z.int()),
  inService: z.optional(date),
});
const readingEntry = z.object({ kind: z.literal('reading'), ...common });
const done = z.object({
  kind: z.literal('done'),
  ...common,
  tasks: z.array(name).check(z.minLength(1)),
  /** Supply id → how much, in the supply's unit. */
  used: z.optional(z.record(name, amount)),
  minutes: z.optional(amount),
});
/** Work with the machine. `at` is the start; `hours` counts when there is no end and no meter difference. An outing with neither `until` nor `hours` is still under way.
 *  Where `until` is earlier than `at` and there is no `untilOn`, it ended on the next day. Meters and readings noted here were taken at its end. */
const outing = z.object({
  kind: z.literal('outing'),
  ...common,
  until: z.optional(time),
  untilOn: z.optional(date),
  hours: z.optional(amount),
  /** Duty ids; with hours where only part of the outing was in that duty. */
  duties: z.optional(z.array(z.object({ duty: name, hours: z.optional(amount) }))),
  attachments: z.optional(z.array(name)),
  shift: z.optional(name),
});
const finding = z.object({ kind: z.literal('finding'), ...common, task: z.optional(name), text: words });
const defectOpened = z.object({ kind: z.literal('defect-opened'), ...common, defect: name, class: z.optional(name) });
const defectClosed = z.object({ kind: z.literal('defect-closed'), ...common, defect: name });
const event = z.object({ kind: z.literal('event'), ...common, event: name });
const attached = z.object({ kind: z.literal('attached'), ...common, attachment: name });
const detached = z.object({ kind: z.literal('detached'), ...common, attachment: name });
/** `final` is what the old meter last showed, `initial` what the new one shows when fitted. */
const meterReplaced = z.object({ kind: z.literal('meter-replaced'), ...common, meter: name, final: amount, initial: amount });
const stands = z.object({ kind: z.literal('stands'), ...common, positions: z.record(name, name) });
const storage = z.object({ kind: z.literal('storage'), ...common, phase: z.enum(['begins', 'ends']) });
const refuelled = z.object({ kind: z.literal('refuelled'), ...common, litres: z.optional(amount) });
const toppedUp = z.object({
  kind: z.literal('topped-up'),
  ...common,
  dipstick: z.optional(name),
  supply: z.optional(name),
  litres: amount,
});
/** What an owner knows without a record: "done before 2025, at about 1,200 h". `on` is when it was stated. */
const stated = z.object({
  kind: z.literal('stated'),
  ...common,
  task: name,
  /** The latest day by which it was done, as far as is known. */
  doneBy: z.optional(date),
  /** Meter id → about what the meter showed when it was done. */
  doneAt: z.optional(z.record(name, amount)),
  words: z.optional(words),
});
const voids = z.object({ kind: z.literal('void'), ...common, entry: id });
/** The owner says that a suspect reading is right. */
const confirms = z.object({ kind: z.literal('confirm'), ...common, entry: id });

/** Any entry of a logbook. */
export const entrySchema = z.discriminatedUnion('kind', [
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
export type Entry = z.infer<typeof entrySchema>;
/** What kind of thing an entry records. */
export type EntryKind = Entry['kind'];
/** The entries of one kind. */
export type EntryOf<K extends EntryKind> = Extract<Entry, { kind: K }>;
/** The id of an entry, unique within its history. */
export type EntryId = string;

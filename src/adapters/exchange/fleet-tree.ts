/**
 * What ISO 15143-3, its forerunner AEMP 1.2, and their JSON forms have in common, read from a tree of plain data.
 *
 * Feeds differ in letter case, in whether the time is an attribute or an element, and in whether one machine is a list: all are taken.
 * Sources: the element names of ISO/TS 15143-3:2016 §11 (the text itself was not at hand); decimal `<Hour>8376.20</Hour>` there,
 * ISO 8601 durations in AEMP 1.2.
 */
import { hoursOfDuration } from './iso-duration.js';
import type { Feed, FeedMeter, MachineNames, MeterSnapshot } from './meter-snapshot.js';

const HOURS: readonly (readonly [string, FeedMeter])[] = [
  ['CumulativeOperatingHours', 'operating-hours'],
  ['CumulativeIdleHours', 'idle-hours'],
];
const KILOMETRES: ReadonlyMap<string, number> = new Map([
  ['kilometre', 1],
  ['kilometer', 1],
  ['km', 1],
  // NIST HB 44 App. C: exact.
  ['mile', 1.609344],
  ['mi', 1.609344],
]);
const DECIMAL = /^\d+(\.\d+)?$/;

/** Reads the meters of every machine in a fleet. Total: what is not understood is a problem, never an exception. */
export function readFleetTree(tree: unknown): Feed {
  const fleet = member(tree, 'Fleet') ?? tree;
  const machines = (Array.isArray(fleet) ? fleet : [fleet]).flatMap((page: unknown) => listOf(member(page, 'Equipment')));
  if (machines.length === 0) return { snapshots: [], problems: ['there is no `Equipment` in it'] };
  const feeds = machines.map(readMachine);
  return { snapshots: feeds.flatMap((feed) => feed.snapshots), problems: feeds.flatMap((feed) => feed.problems) };
}

function readMachine(machine: unknown): Feed {
  const names = machineNames(member(machine, 'EquipmentHeader'));
  const called = names.serial ?? names.pin ?? names.equipmentId ?? 'a machine without a number';
  const snapshots: MeterSnapshot[] = [];
  const problems: string[] = [];
  const take = (meter: FeedMeter, part: unknown, read: (part: unknown) => number | null): void => {
    const value = read(part);
    const instant = text(member(part, 'datetime') ?? member(part, '@datetime'));
    if (value === null) problems.push(`the ${meter} of ${called} are not a number that is 0 or more, nor a duration`);
    else if (instant === undefined) problems.push(`the ${meter} of ${called} do not say when they were read`);
    else snapshots.push({ machine: names, meter, value, instant });
  };
  for (const [name, meter] of HOURS) for (const part of listOf(member(machine, name))) take(meter, part, hoursIn);
  for (const part of listOf(member(machine, 'Distance'))) take('distance-km', part, kilometresIn);
  return { snapshots, problems };
}

function machineNames(header: unknown): MachineNames {
  const named = (name: string): string | undefined => text(member(header, name));
  const pairs = Object.entries({
    make: named('OEMName'),
    model: named('Model'),
    equipmentId: named('EquipmentID'),
    serial: named('SerialNumber'),
    pin: named('PIN'),
  });
  return Object.fromEntries(pairs.filter(([, value]) => value !== undefined));
}

function hoursIn(part: unknown): number | null {
  const written = text(member(part, 'Hour')) ?? text(member(part, '#text')) ?? text(part) ?? '';
  return decimal(written) ?? hoursOfDuration(written);
}

function kilometresIn(part: unknown): number | null {
  const factor = KILOMETRES.get((text(member(part, 'OdometerUnits')) ?? '').toLowerCase());
  const value = decimal(text(member(part, 'Odometer')) ?? '');
  return factor === undefined || value === null ? null : value * factor;
}

function decimal(written: string): number | null {
  return DECIMAL.test(written) ? Number(written) : null;
}

/** A member by its name in any letter case. */
function member(tree: unknown, name: string): unknown {
  if (typeof tree !== 'object' || tree === null) return undefined;
  const wanted = name.toLowerCase();
  return Object.entries(tree).find(([key]) => key.toLowerCase() === wanted)?.[1];
}

function text(value: unknown): string | undefined {
  if (typeof value === 'number' && Number.isFinite(value)) return String(value);
  return typeof value === 'string' && value.trim() !== '' ? value.trim() : undefined;
}

function listOf(value: unknown): readonly unknown[] {
  if (value === undefined || value === null) return [];
  return Array.isArray(value) ? value : [value];
}

/**
 * The closed table of units. A schedule can use these and no others, so a misspelt unit is found when it is compiled.
 *
 * Factors are those of NIST SP 811, Appendix B, and NIST Handbook 44, Appendix C; where those print a rounded value the
 * exact definition stands here (international foot and pound, standard gravity, US gallon of 231 cubic inches, UK gallon).
 */

import { SERVICE_DAYS } from './service-days.js';

/** What a unit measures; two units convert into each other only within one dimension. */
export type Dimension =
  | 'time'
  | 'calendar'
  | 'temperature'
  | 'pressure'
  | 'volume'
  | 'length'
  | 'area'
  | 'mass'
  | 'torque'
  | 'force'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'angle'
  | 'rotation'
  | 'share'
  | 'cycles'
  | 'starts'
  | 'landings'
  | 'service-days'
  | 'bales'
  | 'pieces';

/** One unit of the table. */
export interface Unit {
  /** As the language and every output spell it. */
  readonly symbol: string;
  /** Other spellings that mean the same. */
  readonly aliases: readonly string[];
  readonly dimension: Dimension;
  /** value × factor + offset is the value in the dimension's base unit (the first of it in the table). */
  readonly factor: number;
  readonly offset: number;
}

/** A calendar unit in terms of days, months or calendar months. */
export interface CalendarUnit {
  readonly unit: 'days' | 'months' | 'calendar-months';
  readonly count: number;
  /** Of calendar months: how many make up the period to whose end they run, where it is more than one. */
  readonly period?: 3 | 6 | 12;
}

/** Every unit, by dimension; the first of each dimension is its base. */
export const UNITS: readonly Unit[] = /* @__PURE__ */ units();

// Marked, like the table itself, so that a bundler drops both for whoever names no unit.
const BY_SPELLING: ReadonlyMap<string, Unit> = /* @__PURE__ */ new Map(
  /* @__PURE__ */ UNITS.flatMap((each) => [each.symbol, ...each.aliases].map((spelling): [string, Unit] => [spelling, each])),
);

function units(): readonly Unit[] {
  const POUND = 0.453_592_37;
  const GRAVITY = 9.806_65;
  const POUND_FORCE = POUND * GRAVITY;
  return [
    unit('h', 'time', 1),
    unit('min', 'time', 1 / 60),
    unit('s', 'time', 1 / 3600),
    unit('days', 'calendar', 1, ['day']),
    unit('weeks', 'calendar', 7, ['week']),
    unit('months', 'calendar', Number.NaN, ['month']),
    unit('years', 'calendar', Number.NaN, ['year']),
    unit('calendar months', 'calendar', Number.NaN, ['calendar month']),
    unit('calendar quarters', 'calendar', Number.NaN, ['calendar quarter']),
    unit('calendar half-years', 'calendar', Number.NaN, ['calendar half-year']),
    unit('calendar years', 'calendar', Number.NaN, ['calendar year']),
    unit('°C', 'temperature', 1),
    { symbol: '°F', aliases: [], dimension: 'temperature', factor: 5 / 9, offset: -160 / 9 },
    { symbol: 'K', aliases: [], dimension: 'temperature', factor: 1, offset: -273.15 },
    unit('kPa', 'pressure', 1),
    unit('MPa', 'pressure', 1000),
    unit('bar', 'pressure', 100),
    unit('psi', 'pressure', POUND_FORCE / 0.0254 ** 2 / 1000),
    unit('L', 'volume', 1),
    unit('mL', 'volume', 0.001),
    unit('m³', 'volume', 1000),
    unit('gal', 'volume', 3.785_411_784),
    unit('qt', 'volume', 0.946_352_946),
    unit('fl-oz', 'volume', 0.029_573_529_562_5),
    unit('gal-uk', 'volume', 4.546_09),
    unit('mm', 'length', 1),
    unit('cm', 'length', 10),
    unit('m', 'length', 1000),
    unit('km', 'length', 1_000_000),
    unit('in', 'length', 25.4, ['inch', 'inches']),
    unit('ft', 'length', 304.8),
    unit('mi', 'length', 1_609_344, ['mile', 'miles']),
    unit('ha', 'area', 1),
    unit('m²', 'area', 0.0001),
    unit('acres', 'area', 0.404_685_642_24, ['acre']),
    unit('kg', 'mass', 1),
    unit('g', 'mass', 0.001),
    unit('t', 'mass', 1000),
    unit('lb', 'mass', POUND),
    unit('N·m', 'torque', 1, ['N-m']),
    unit('lbf·ft', 'torque', POUND_FORCE * 0.3048, ['lbf-ft']),
    unit('lbf·in', 'torque', POUND_FORCE * 0.0254, ['lbf-in']),
    unit('kgf·m', 'torque', GRAVITY, ['kgf-m']),
    unit('N', 'force', 1),
    unit('kN', 'force', 1000),
    unit('lbf', 'force', POUND_FORCE),
    unit('V', 'voltage', 1),
    unit('mV', 'voltage', 0.001),
    unit('A', 'current', 1),
    unit('mA', 'current', 0.001),
    unit('Ω', 'resistance', 1),
    unit('kΩ', 'resistance', 1000),
    unit('MΩ', 'resistance', 1_000_000),
    unit('°', 'angle', 1),
    unit('rpm', 'rotation', 1),
    unit('%', 'share', 1),
    unit('cycles', 'cycles', 1, ['cycle']),
    unit('starts', 'starts', 1, ['start']),
    unit('landings', 'landings', 1, ['landing']),
    unit(SERVICE_DAYS, 'service-days', 1, ['service-day']),
    unit('bales', 'bales', 1, ['bale']),
    unit('each', 'pieces', 1),
  ];
}

const DIMENSION_NAMES: Readonly<Record<Dimension, string>> = {
  time: 'a time at work',
  calendar: 'a calendar span',
  temperature: 'a temperature',
  pressure: 'a pressure',
  volume: 'a volume',
  length: 'a distance',
  area: 'an area',
  mass: 'a mass',
  torque: 'a torque',
  force: 'a force',
  voltage: 'a voltage',
  current: 'a current',
  resistance: 'a resistance',
  angle: 'an angle',
  rotation: 'a speed of rotation',
  share: 'a percentage',
  cycles: 'a number of cycles',
  starts: 'a number of starts',
  landings: 'a number of landings',
  'service-days': 'a number of days of service',
  bales: 'a number of bales',
  pieces: 'a number of pieces',
};

/** The unit with that spelling; `null` for a word that is none. Case counts: `MPa` is not `mpa`. */
export function findUnit(spelling: string): Unit | null {
  return BY_SPELLING.get(spelling) ?? null;
}

/** Every spelling, for the lexer and for near-name help. */
export function unitSpellings(): readonly string[] {
  return [...BY_SPELLING.keys()];
}

/** A dimension as messages name it: "a torque". */
export function dimensionName(dimension: Dimension): string {
  return DIMENSION_NAMES[dimension];
}

/**
 * A value in another unit, to 15 significant digits; `null` where the units do not measure the same thing, or where there is
 * no fixed factor (a month is not a number of days).
 *
 * @example convert(212, °F, °C) // 100
 */
export function convert(value: number, from: Unit, to: Unit): number | null {
  if (from === to) return value;
  if (!convertible(from, to)) return null;
  return clean((value * from.factor + from.offset - to.offset) / to.factor);
}

/** As {@link convert}, for a difference: a rise of 18 °F is one of 10 °C. */
export function convertDifference(value: number, from: Unit, to: Unit): number | null {
  if (from === to) return value;
  return convertible(from, to) ? clean((value * from.factor) / to.factor) : null;
}

/** What one of a calendar unit is; `null` for any other unit. */
export function calendarUnit(of: Unit): CalendarUnit | null {
  switch (of.symbol) {
    case 'days':
      return { unit: 'days', count: 1 };
    case 'weeks':
      return { unit: 'days', count: 7 };
    case 'months':
      return { unit: 'months', count: 1 };
    case 'years':
      return { unit: 'months', count: 12 };
    case 'calendar months':
      return { unit: 'calendar-months', count: 1 };
    case 'calendar quarters':
      return { unit: 'calendar-months', count: 3, period: 3 };
    case 'calendar half-years':
      return { unit: 'calendar-months', count: 6, period: 6 };
    case 'calendar years':
      return { unit: 'calendar-months', count: 12, period: 12 };
    default:
      return null;
  }
}

function convertible(from: Unit, to: Unit): boolean {
  return from.dimension === to.dimension && !Number.isNaN(from.factor) && !Number.isNaN(to.factor);
}

function clean(value: number): number {
  return Number(value.toPrecision(15));
}

function unit(symbol: string, dimension: Dimension, factor: number, aliases: readonly string[] = []): Unit {
  return { symbol, aliases, dimension, factor, offset: 0 };
}

/**
 * Units as the tree writes them, and what is said about one that will not do.
 */
import { nearNames } from '../../base/near-name.js';
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { NumberNode, QuantityNode, UnitNode } from '../../syntax/tree.js';
import { TICKS_PER_UNIT } from '../../values/ticks.js';
import { convert, convertDifference, dimensionName, findUnit, UNITS, unitSpellings, type Unit } from '../../values/units.js';
import { rewrite } from '../report.js';
import { problem, type CodedProblem, type Read } from './read.js';

/** The unit that a spelling stands for. */
export function unitOf(node: UnitNode): Read<Unit> {
  const found = findUnit(node.text);
  if (found !== null) return { value: found };
  const plain = node.text.replace(/^calendar /, '');
  const near = nearUnits(plain);
  const help =
    near.length === 0
      ? `The units are ${UNITS.map(({ symbol }) => symbol).join(', ')}.`
      : `Did you mean ${near.map((name) => `\`${name}\``).join(' or ')}?${plain === node.text ? '' : ' Once in each week is `every calendar week`.'}`;
  const fixes = near.map((name, order) => rewrite(order === 0 ? 'likely' : 'possible', node.at, name));
  return problem('unknownUnit', { at: node.at, message: `There is no unit \`${node.text}\`.`, help, fixes });
}

/** A quantity converted to a unit; a problem that says what was expected (asked for only then) where it measures something else. */
export function quantityIn(quantity: QuantityNode, wanted: Unit, because: () => Expectation): Read<number> {
  return inUnit(quantity, wanted, because, convert);
}

/** As {@link quantityIn}, for a difference: a rise of 18 °F is one of 10 °C. */
export function differenceIn(quantity: QuantityNode, wanted: Unit, because: () => Expectation): Read<number> {
  return inUnit(quantity, wanted, because, convertDifference);
}

/** What was expected in place of the unit that stands there, and the place that says so. */
export interface Expectation {
  /** Follows "wanted": "a temperature in °C, which `coolant` reads". */
  readonly wanted: string;
  readonly labels?: Diagnostic['labels'];
  readonly help?: string;
}

/** The problem of a unit that measures the wrong thing. */
export function wrongUnit(node: UnitNode, unit: Unit, { wanted, labels = [], help }: Expectation): { readonly problem: CodedProblem } {
  const message = `\`${node.text}\` is ${dimensionName(unit.dimension)}, where ${wanted} is wanted.`;
  return problem('wrongUnit', { at: node.at, message, labels, ...(help === undefined ? {} : { help }) });
}

/** Ticks of `wanted` in so many of `unit`; null where the two do not convert. */
export function ticksIn(number: NumberNode, unit: Unit, wanted: Unit): number | null {
  const value = convert(number.value, unit, wanted);
  return value === null ? null : Math.round(value * TICKS_PER_UNIT);
}

/** Seconds in a quantity of time. */
export function secondsOf(quantity: QuantityNode): Read<number> {
  const seconds = findUnit('s');
  if (seconds === null) throw new Error('the table of units has lost its second');
  const read = quantityIn(quantity, seconds, () => ({ wanted: 'a time', help: 'Write it in min, s or h.' }));
  return 'value' in read ? { value: Math.round(read.value) } : read;
}

function inUnit(quantity: QuantityNode, wanted: Unit, because: () => Expectation, change: typeof convert): Read<number> {
  const unit = unitOf(quantity.unit);
  if ('problem' in unit) return unit;
  const value = change(quantity.number.value, unit.value, wanted);
  return value === null ? wrongUnit(quantity.unit, unit.value, because()) : { value };
}

function nearUnits(text: string): readonly string[] {
  const folded = unitSpellings().filter((spelling) => fold(spelling) === fold(text));
  const near = folded.length > 0 ? folded : nearNames(text, unitSpellings());
  // Of several spellings of one unit only its own.
  return [...new Set(near.map((spelling) => findUnit(spelling)?.symbol ?? spelling))].slice(0, 3);
}

/** Spellings that people use for one unit come out the same: `deg-c` and `°C`, `nm` and `N·m`, `hours` and `h`. */
function fold(text: string): string {
  const plain = text.toLowerCase().replace(/°|deg(rees)?|[·\-\s.]/g, '');
  return familiar.get(plain) ?? plain;
}

const familiar = new Map([
  ['hour', 'h'],
  ['hours', 'h'],
  ['hr', 'h'],
  ['hrs', 'h'],
  ['minute', 'min'],
  ['minutes', 'min'],
  ['mins', 'min'],
  ['second', 's'],
  ['seconds', 's'],
  ['sec', 's'],
  ['litre', 'l'],
  ['litres', 'l'],
  ['liter', 'l'],
  ['liters', 'l'],
  ['celsius', 'c'],
  ['fahrenheit', 'f'],
  ['ftlb', 'lbfft'],
  ['ftlbs', 'lbfft'],
  ['ftlbf', 'lbfft'],
  ['newtonmetres', 'nm'],
  ['volt', 'v'],
  ['volts', 'v'],
  ['d', 'days'],
  ['yr', 'years'],
  ['yrs', 'years'],
  ['mth', 'months'],
  ['mths', 'months'],
  ['mos', 'months'],
  ['wks', 'weeks'],
  ['ltr', 'l'],
  ['metre', 'm'],
  ['metres', 'm'],
  ['meters', 'm'],
  ['kilometres', 'km'],
  ['kilometers', 'km'],
  ['kms', 'km'],
  ['kilograms', 'kg'],
  ['lbs', 'lb'],
  ['lbft', 'lbfft'],
  ['lbsft', 'lbfft'],
  ['inlb', 'lbfin'],
  ['inlbs', 'lbfin'],
  ['amps', 'a'],
  ['amp', 'a'],
  ['ohm', 'ω'],
  ['ohms', 'ω'],
  ['percent', '%'],
  ['y', 'years'],
  ['wk', 'weeks'],
  ['mo', 'months'],
  ['gallons', 'gal'],
  ['gallon', 'gal'],
  ['m3', 'm³'],
  ['pcs', 'each'],
]);

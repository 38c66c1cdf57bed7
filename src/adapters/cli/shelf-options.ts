import type { Command } from 'commander';
import type { RuleGraph } from '../../engine.js';
import { inUnit } from '../../values/in-unit.js';
import { readCsv } from '../exchange/csv.js';
import { usedAmounts } from '../logbook/recording/record-phrases.js';
import { noSuch } from './complain.js';
import { type Parsed, refused, understood } from './parsed.js';
import { readText } from './read-text.js';

/** What is on the shelf, said in words or kept in a table. */
export interface ShelfOptions {
  readonly have?: string;
  readonly shelf?: string;
}

/** Supply → how much is there, in the supply's unit. */
export type Shelf = ReadonlyMap<string, number>;

/** Adds `--have` and `--shelf`. */
export function addShelfOptions(command: Command): Command {
  return command
    .option('--have <amounts>', 'what is there, such as "2 oil-filter, 10 L engine-oil-15w40"')
    .option('--shelf <file>', 'the same as a table (CSV): supply, amount, unit');
}

/** What the options say is there; where both name a supply, it adds up. Refused with the first thing that is not understood. */
export function readShelf({ have, shelf }: ShelfOptions, graph: RuleGraph): Parsed<Shelf> {
  const said = have === undefined ? understood<Shelf>(new Map()) : readAmounts(have, graph);
  const kept = shelf === undefined ? understood<Shelf>(new Map()) : readTable(shelf, graph);
  if (!said.ok || !kept.ok) return said.ok ? kept : said;
  return understood(addedUp([...said.value, ...kept.value]));
}

function readAmounts(text: string, graph: RuleGraph): Parsed<Shelf> {
  const amounts = usedAmounts(graph, text.trim().split(/\s+/));
  if (typeof amounts === 'string') return refused(amounts);
  const stray = Object.keys(amounts).find((name) => !isSupply(name, graph));
  return stray === undefined ? understood(new Map(Object.entries(amounts))) : refused(noSupply(stray, graph));
}

/** One supply a row: its name, how much, and its unit or nothing. A first row whose amount is no number is a heading. */
function readTable(path: string, graph: RuleGraph): Parsed<Shelf> {
  const text = readText(path);
  if (!text.ok) return refused(text.problem);
  const { rows, separator, problem } = readCsv(text.value);
  if (problem !== null) return refused(`${path}:${problem.row}: ${problem.what}.`);
  const amounts: (readonly [string, number])[] = [];
  for (const [index, row] of rows.entries()) {
    const [name = '', written = '', unit = ''] = row.map((cell) => cell.trim());
    if (name === '' && written === '') continue;
    const amount = Number(separator === ';' ? written.replace(',', '.') : written);
    if (index === 0 && !Number.isFinite(amount)) continue;
    const counted = inSupplyUnit(name, written === '' ? NaN : amount, unit, graph);
    if (typeof counted === 'string') return refused(`${path}:${index + 1}: ${counted}`);
    amounts.push([name, counted]);
  }
  return understood(addedUp(amounts));
}

/** The amount in the supply's own unit, or what is wrong with the row. */
function inSupplyUnit(name: string, amount: number, unit: string, graph: RuleGraph): number | string {
  const supply = graph.supplies.find(({ id }) => id === name);
  if (supply === undefined) return noSupply(name, graph);
  if (!Number.isFinite(amount) || amount < 0) return `after \`${name}\` stands how much of it is there, as a number.`;
  const own = supply.unit ?? 'each';
  return inUnit(amount, unit === '' ? own : unit, own) ?? `\`${name}\` is counted in ${own}, not in ${unit}.`;
}

function isSupply(name: string, graph: RuleGraph): boolean {
  return graph.supplies.some(({ id }) => id === name);
}

function noSupply(name: string, graph: RuleGraph): string {
  return noSuch(
    'supply',
    name,
    graph.supplies.map(({ id }) => id),
  );
}

function addedUp(amounts: Iterable<readonly [string, number]>): Shelf {
  const sum = new Map<string, number>();
  for (const [name, amount] of amounts) sum.set(name, (sum.get(name) ?? 0) + amount);
  return sum;
}

/**
 * An independent recogniser (Earley's) for the published grammar over lists of tokens: it shares no code with the parser.
 */
import { reservedWords } from '../../src/syntax/words.js';
import { MONTH_NAMES } from '../../src/values/calendar.js';
import { unitSpellings } from '../../src/values/units.js';
import type { Ebnf, Expression } from './ebnf.js';

/** A symbol of the flattened grammar: a terminal test, or the number of a nonterminal. */
type Symbol = { readonly test: (token: string) => boolean } | number;

interface Flat {
  /** Alternatives of each nonterminal. */
  readonly rules: readonly (readonly (readonly Symbol[])[])[];
  readonly start: number;
  readonly nullable: ReadonlySet<number>;
}

const NAME = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*(?:\.[a-z][a-z0-9]*(?:-[a-z0-9]+)*)*$/;
const signs = new Set(unitSpellings().filter((each) => !NAME.test(each) && !each.includes(' ')));

const lexical: Readonly<Record<string, (token: string) => boolean>> = {
  Name: (token) => NAME.test(token) && !reservedWords.has(token),
  Text: (token) => token.startsWith('"'),
  Integer: (token) => /^\d+$/.test(token),
  Number: (token) => /^-?\d+(?:\.\d+)?$/.test(token),
  Date: (token) => /^\d{4}-\d\d-\d\d$/.test(token),
  Time: (token) => /^\d\d:\d\d$/.test(token),
  Month: (token) => (MONTH_NAMES as readonly string[]).includes(token),
  UnitSign: (token) => signs.has(token),
};

/** Prepares a recogniser for sentences of `start`. */
export function recogniser(rules: Ebnf, start: string): (tokens: readonly string[]) => boolean {
  const flat = flatten(rules, start);
  return (tokens) => recognise(flat, tokens);
}

function flatten(ebnf: Ebnf, start: string): Flat {
  const rules: Symbol[][][] = [];
  const numbers = new Map<string, number>();
  const fresh = (): number => rules.push([]) - 1;
  const ofRule = (name: string): Symbol => {
    const test = lexical[name];
    if (test !== undefined) return { test };
    const known = numbers.get(name);
    if (known !== undefined) return known;
    const number = fresh();
    numbers.set(name, number);
    const body = ebnf.get(name);
    if (body === undefined) throw new Error(`the EBNF has no ${name}`);
    rules[number]?.push(sequence(body));
    return number;
  };
  const sequence = (each: Expression): Symbol[] => (each.kind === 'sequence' ? each.parts.map(symbol) : [symbol(each)]);
  const symbol = (each: Expression): Symbol => {
    if (each.kind === 'word') return { test: (token) => token === each.text };
    if (each.kind === 'rule') return ofRule(each.name);
    const number = fresh();
    if (each.kind === 'choice') for (const part of each.parts) rules[number]?.push(sequence(part));
    else if (each.kind === 'sequence') rules[number]?.push(sequence(each));
    else if (each.kind === 'optional') rules[number]?.push([], sequence(each.part));
    else {
      const once = sequence(each.part);
      rules[number]?.push(each.kind === 'plus' ? once : [], [number, ...once]);
    }
    return number;
  };
  const first = ofRule(start);
  if (typeof first !== 'number') throw new Error('the start rule is lexical');
  return { rules, start: first, nullable: nullables(rules) };
}

function nullables(rules: readonly (readonly (readonly Symbol[])[])[]): ReadonlySet<number> {
  const found = new Set<number>();
  for (let size = -1; size !== found.size;) {
    size = found.size;
    rules.forEach((alternatives, number) => {
      if (alternatives.some((each) => each.every((part) => typeof part === 'number' && found.has(part)))) found.add(number);
    });
  }
  return found;
}

interface Item {
  readonly rule: number;
  readonly symbols: readonly Symbol[];
  readonly dot: number;
  readonly origin: number;
}

function recognise(flat: Flat, tokens: readonly string[]): boolean {
  const sets: Map<string, Item>[] = Array.from({ length: tokens.length + 1 }, () => new Map());
  const ids = new Map<readonly Symbol[], number>();
  const add = (at: number, item: Item): void => {
    if (!ids.has(item.symbols)) ids.set(item.symbols, ids.size);
    const key = `${item.rule}.${ids.get(item.symbols) ?? 0}.${item.dot}.${item.origin}`;
    const set = sets[at];
    if (set !== undefined && !set.has(key)) set.set(key, item);
  };
  for (const symbols of flat.rules[flat.start] ?? []) add(0, { rule: flat.start, symbols, dot: 0, origin: 0 });
  sets.forEach((set, at) => {
    for (const item of set.values()) {
      const next = item.symbols[item.dot];
      if (next === undefined) {
        for (const waiting of sets[item.origin]?.values() ?? []) {
          if (waiting.symbols[waiting.dot] === item.rule) add(at, { ...waiting, dot: waiting.dot + 1 });
        }
      } else if (typeof next === 'number') {
        for (const symbols of flat.rules[next] ?? []) add(at, { rule: next, symbols, dot: 0, origin: at });
        if (flat.nullable.has(next)) add(at, { ...item, dot: item.dot + 1 });
      } else if (tokens[at] !== undefined && next.test(tokens[at])) {
        add(at + 1, { ...item, dot: item.dot + 1 });
      }
    }
  });
  return [...(sets[tokens.length]?.values() ?? [])].some(
    (each) => each.rule === flat.start && each.origin === 0 && each.dot === each.symbols.length,
  );
}

/**
 * Derives random sentences from the published grammar, as lists of tokens.
 */
import { unitSpellings } from '../../src/values/units.js';
import { MONTH_NAMES } from '../../src/values/calendar.js';
import type { Ebnf, Expression } from './ebnf.js';

/** A small repeatable source of numbers in [0, 1) (mulberry32). */
export function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const NAMES = ['x1', 'front-axle', 'pump', 'mower.rotor', 'b2-c', 'zeta', 'left-hand'];
const TEXTS = ['"A text"', '""', '"with \\"quotes\\" and \\\\ in it"', '"°, # and task are plain here"'];

/** One sentence of a rule. `size` bounds how long repetitions and how deep recursion grow. */
export function derive(rules: Ebnf, rule: string, random: () => number, size = 6): readonly string[] {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const out: string[] = [];
  const lexical: Readonly<Record<string, () => string>> = {
    Name: () => pick(NAMES),
    Text: () => pick(TEXTS),
    Integer: () => pick(['0', '1', '12', '2026']),
    Number: () => pick(['0', '1', '6.6', '-4', '100', '1299.95']),
    Date: () => pick(['2026-02-14', '1999-12-31']),
    Time: () => pick(['07:30', '23:59']),
    Month: () => pick(MONTH_NAMES),
    // Any unit that is one token and no reserved word: the language has a closed list of them.
    Unit: () => pick(unitSpellings().filter((each) => !each.includes(' ') && each !== 'in')),
  };
  const visit = (each: Expression, depth: number): void => {
    switch (each.kind) {
      case 'word':
        out.push(each.text);
        return;
      case 'rule': {
        const made = lexical[each.name];
        if (made !== undefined) out.push(made());
        else visit(rules.get(each.name) ?? missing(each.name), depth + 1);
        return;
      }
      case 'sequence':
        each.parts.forEach((part) => visit(part, depth));
        return;
      case 'choice':
        visit(depth > 14 ? flattest(each.parts) : pick(each.parts), depth);
        return;
      case 'optional':
        if (random() < 0.5 && depth < 18) visit(each.part, depth);
        return;
      case 'star':
      case 'plus': {
        const least = each.kind === 'plus' ? 1 : 0;
        const times = depth > 14 ? least : least + Math.floor(random() * (depth < 6 ? size : 3));
        for (let n = 0; n < times; n += 1) visit(each.part, depth);
        return;
      }
    }
  };
  visit({ kind: 'rule', name: rule }, 0);
  return out;
}

/** Deep inside, a choice that does not lead back into itself: in this grammar the recursive one is never the last but for `PlanTerm` and `Factor`. */
function flattest(parts: readonly Expression[]): Expression {
  const plain = parts.filter((each) => each.kind === 'rule' && ['Fact', 'Limit', 'Span', 'Percent'].includes(each.name));
  return plain[0] ?? parts[0] ?? missing('a choice');
}

function missing(what: string): never {
  throw new Error(`the EBNF has no ${what}`);
}

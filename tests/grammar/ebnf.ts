/**
 * Reads grammar/duewright.ebnf itself, so that tests hold the parser to what is published and not to a copy of it.
 */
import { readFileSync } from 'node:fs';

/** A part of a production. */
export type Expression =
  | { readonly kind: 'word'; readonly text: string }
  | { readonly kind: 'rule'; readonly name: string }
  | { readonly kind: 'sequence'; readonly parts: readonly Expression[] }
  | { readonly kind: 'choice'; readonly parts: readonly Expression[] }
  | { readonly kind: 'optional'; readonly part: Expression }
  | { readonly kind: 'star'; readonly part: Expression }
  | { readonly kind: 'plus'; readonly part: Expression };

/** Productions by name; lexical ones (with character classes) are left to {@link lexicalRules}. */
export type Ebnf = ReadonlyMap<string, Expression>;

/** What the lexer makes in one piece. */
export const lexicalRules = ['Name', 'Text', 'Integer', 'Number', 'Date', 'Time', 'Month', 'UnitSign'] as const;

/** The published grammar. */
export function readEbnf(): Ebnf {
  const text = readFileSync(new URL('../../grammar/duewright.ebnf', import.meta.url), 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');
  const rules = new Map<string, Expression>();
  for (const match of text.matchAll(/^(\w+)\s*::=\s*([\s\S]*?)(?=^\w+\s*::=|(?![\s\S]))/gm)) {
    const [, name = '', body = ''] = match;
    if (!(lexicalRules as readonly string[]).includes(name)) rules.set(name, parseBody(body));
  }
  return rules;
}

function parseBody(body: string): Expression {
  const tokens = body.match(/"[^"]*"|\w+|[()|?*+]/g) ?? [];
  let next = 0;
  const choice = (): Expression => {
    const parts = [sequence()];
    while (tokens[next] === '|') {
      next += 1;
      parts.push(sequence());
    }
    return parts.length === 1 ? (parts[0] ?? { kind: 'sequence', parts: [] }) : { kind: 'choice', parts };
  };
  const sequence = (): Expression => {
    const parts: Expression[] = [];
    while (next < tokens.length && tokens[next] !== '|' && tokens[next] !== ')') parts.push(repeated());
    return parts.length === 1 ? (parts[0] ?? { kind: 'sequence', parts: [] }) : { kind: 'sequence', parts };
  };
  const repeated = (): Expression => {
    const part = atom();
    const sign = tokens[next];
    if (sign !== '?' && sign !== '*' && sign !== '+') return part;
    next += 1;
    return { kind: sign === '?' ? 'optional' : sign === '*' ? 'star' : 'plus', part };
  };
  const atom = (): Expression => {
    const token = tokens[next] ?? '';
    next += 1;
    if (token.startsWith('"')) return { kind: 'word', text: token.slice(1, -1) };
    if (token !== '(') return { kind: 'rule', name: token };
    const inner = choice();
    if (tokens[next] !== ')') throw new Error('a parenthesis in the EBNF is not closed');
    next += 1;
    return inner;
  };
  const whole = choice();
  if (next !== tokens.length) throw new Error(`the EBNF goes wrong at ${tokens[next] ?? 'its end'}`);
  return whole;
}

/** Every word and sign in quotes. */
export function ebnfWords(rules: Ebnf): ReadonlySet<string> {
  const words = new Set<string>();
  const visit = (each: Expression): void => {
    if (each.kind === 'word') words.add(each.text);
    else if (each.kind === 'sequence' || each.kind === 'choice') each.parts.forEach(visit);
    else if (each.kind !== 'rule') visit(each.part);
  };
  for (const rule of rules.values()) visit(rule);
  return words;
}

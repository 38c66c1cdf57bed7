import { nearNames, type Patience } from '../../base/near-name.js';
import type { Rule } from '../context.js';
import { clausesOf } from '../clauses-of.js';
import type { Home, NameKind, Reference } from '../model.js';
import { lookUp, type NameTable } from '../names.js';
import { diagnostic, rewrite } from '../report.js';
import { listed } from '../../base/listed.js';
import { kindsName, ticked } from '../words.js';

/** Every kind there is, in the order in which other kinds are offered. */
export const allKinds: readonly NameKind[] = [
  'task',
  'meter',
  'gauge',
  'dipstick',
  'defect',
  'event',
  'duty',
  'attachment',
  'position',
  'supply',
  'hazard',
  'place',
  'step',
  'stop',
];

/**
 * Each name that is used has to be declared; near names of the wanted kind are suggested, nearest first. While a file is missing nothing is said:
 * one wrong path would be told as every name that is declared there.
 */
export const unknownName: Rule = {
  codes: ['unknownName'],
  scope: 'declaration',
  check: ({ model, table, patience, complete }) => {
    if (!complete) return [];
    const alone = clausesOf(model.header.clauses, 'for-attachment').length > 0;
    return model.references.flatMap((reference) => {
      if (reference.definition !== undefined || lookUp(table, reference.name, allKinds, reference.home) !== undefined) return [];
      return [describe(reference, table, alone, patience)];
    });
  },
};

const elsewhere = "If the machine has it, check the machine's schedule, which mounts this one.";

function describe({ name, kinds, home }: Reference, table: NameTable, alone: boolean, patience: Patience): ReturnType<typeof diagnostic> {
  const near = nearNames(name.text, table.visible(kinds, home), patience).slice(0, 3);
  const what = kindsName(kinds).replace(/\ban? /g, '');
  const message = kinds.length > 3 ? `Nothing here is called ${ticked(name.text)}.` : `There is no ${what} called ${ticked(name.text)}.`;
  return diagnostic('unknownName', {
    at: name.at,
    message,
    help: near.length > 0 ? `Did you mean ${listed(near.map(ticked), 'or')}?` : alone ? elsewhere : fallback(name.text, kinds, home, table),
    fixes: near.map((candidate, order) => rewrite(order === 0 ? 'likely' : 'possible', name.at, candidate)),
  });
}

function fallback(name: string, kinds: readonly NameKind[], home: Home, table: NameTable): string {
  const known = table.visible(kinds, home);
  const kind = kinds[0] ?? 'task';
  if (known.length > 0 && known.length <= 6) return `Declared are ${listed(known.map(ticked), 'and')}.`;
  return `Declare it, with a title: \`${kind} ${name} "…"\`.`;
}

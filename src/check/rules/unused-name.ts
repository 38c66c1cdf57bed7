import { nearName, patience } from '../../base/near-name.js';
import type { Rule } from '../context.js';
import { placed, type Definition, type NameKind, type Reference } from '../model.js';
import { isInPart } from '../in-part.js';
import { diagnostic } from '../report.js';
import { kindName, ticked } from '../words.js';

/** What an owner can log whether or not a rule speaks of it is not among these. */
const kinds: readonly NameKind[] = ['meter', 'gauge', 'dipstick', 'duty', 'position', 'place', 'supply', 'hazard', 'event'];

/**
 * Each thing declared in the file that was asked for should be used by something other than a worked example or `at rest`. What parts
 * and the bases of variants declare is for many schedules, and is left alone.
 */
export const unusedName: Rule = {
  codes: ['unusedName'],
  scope: 'schedule',
  check: ({ model, headers, referencesOf, whole }) => {
    if (!whole) return [];
    const candidates = model.definitions.filter(
      (definition) => definition.at.file === 0 && kinds.includes(definition.kind) && !isInPart(headers, definition.at),
    );
    if (candidates.length === 0) return [];
    const lost = [...new Set(model.references.flatMap(({ name, definition }) => (definition === undefined ? [name.text] : [])))];
    const apart = [...placed(model, 'example'), ...placed(model, 'rest')].flatMap(({ node }) => referencesOf(node));
    const [uses, usesApart] = [usesOf(model.references), usesOf(apart)];
    const isUsed = (definition: Definition): boolean => (uses.get(definition) ?? 0) > (usesApart.get(definition) ?? 0);
    const tasks = placed(model, 'task').length > 0;
    const ofUnit = new Map<string, number>();
    for (const { node } of model.meters) ofUnit.set(node.unit.text, (ofUnit.get(node.unit.text) ?? 0) + 1);
    const isOnly = ({ node }: Definition): boolean => node.kind === 'meter' && ofUnit.get(node.unit.text) === 1;
    // Its own, so that looking here takes nothing from what is told of the names themselves.
    const shared = patience();
    return candidates.flatMap((definition) => {
      if (isUsed(definition)) return [];
      // It may be what a misspelt name was meant for, which is told already.
      if (shared.left <= 0 || lost.some((name) => nearName(name, [definition.name], shared) !== undefined)) return [];
      // A span without `of` (`500 starts`) may be counting on the only meter of its unit.
      if (tasks && isOnly(definition)) return [];
      return [
        diagnostic('unusedName', {
          at: definition.at,
          message: `${ticked(definition.name)} is ${kindName(definition.kind)} that nothing uses.`,
          help: 'Use it in a rule, or take it out.',
        }),
      ];
    });
  },
};

/** How often things are named. */
function usesOf(references: readonly Reference[]): ReadonlyMap<Definition, number> {
  const uses = new Map<Definition, number>();
  for (const { definition } of references)
    if (definition !== undefined && definition.kind !== 'task') uses.set(definition, (uses.get(definition) ?? 0) + 1);
  return uses;
}

import type { Rule } from '../context.js';
import { placed, type NameKind } from '../model.js';
import { diagnostic } from '../report.js';
import { usesIn } from '../references.js';
import { kindName, ticked } from '../words.js';

/** What an owner can log whether or not a rule speaks of it is not among these. */
const kinds: readonly NameKind[] = ['meter', 'gauge', 'dipstick', 'duty', 'position', 'place', 'supply', 'hazard', 'event'];

/**
 * Each thing declared in the file that was asked for should be used by something other than a worked example or `at rest`. What parts and bases
 * declare is for many schedules, and is left alone.
 */
export const unusedName: Rule = {
  codes: ['unusedName'],
  check: ({ model }) => {
    const used = new Set(
      model.declarations.filter(({ node }) => node.kind !== 'example' && node.kind !== 'rest').flatMap(({ node }) => usesIn(node).map(({ name }) => model.meaning.get(name))),
    );
    const bareHours = placed(model, 'task').length > 0 && model.definitions.filter(({ kind }) => kind === 'meter').length === 1;
    return model.definitions.flatMap((definition) => {
      if (definition.at.file !== 0 || !kinds.includes(definition.kind) || used.has(definition)) return [];
      // A span in bare hours may be counting on the only meter.
      if (definition.kind === 'meter' && bareHours) return [];
      return [diagnostic('unusedName', { at: definition.at, message: `${ticked(definition.name)} is ${kindName(definition.kind)} that nothing uses.`, help: 'Use it in a rule, or take it out.' })];
    });
  },
};

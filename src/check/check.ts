/**
 * The door of this folder: a schedule's files, checked.
 */
import type { SourceText } from '../base/source-text.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { gather } from './load/gather.js';
import { defaultLimits, type Limits } from './load/limits.js';
import type { Loader, Shelf } from './load/shelf.js';
import { isDefinitionOf, type DefinitionOf, type Model } from './model.js';
import { nameTable, resolveNames } from './names.js';
import { nodeIndex } from './walk.js';
import { rules } from './rules/index.js';
import { collect, hasErrors } from '../diagnostics/collect.js';

export interface CheckOptions {
  /** Bounds on what a schedule may ask for; those left out keep their defaults (8 deep, 32 files, 5,000 rules). */
  readonly limits?: Partial<Limits>;
}

export interface Checked {
  /** Null where the file that was asked for cannot be read as a schedule at all. */
  readonly model: Model | null;
  /** By place, without repeats. */
  readonly diagnostics: readonly Diagnostic[];
  /** The files, in the order in which they were opened; spans say which by index. */
  readonly sources: readonly SourceText[];
}

/**
 * Reads a schedule and all that it is made of, and says everything that is wrong with it.
 *
 * Pure: files come from `load`, which is asked only for `path` and for paths below the folders of the files that name them.
 *
 * @example check('tarn-55.due', (path) => files.get(path)).diagnostics
 */
export function check(path: string, load: Loader, options: CheckOptions = {}): Checked {
  const shelf: Shelf = { load, limits: { ...defaultLimits, ...options.limits }, sources: [], diagnostics: [] };
  const gathered = gather(shelf, path);
  const header = gathered?.headers[0];
  if (gathered === undefined || header === undefined)
    return { model: null, diagnostics: collect(shelf.diagnostics), sources: shelf.sources };
  const { declarations, headers } = gathered;
  const table = nameTable(declarations);
  const references = resolveNames(declarations, table);
  const meaning = new Map(references.flatMap(({ name, definition }) => (definition === undefined ? [] : [[name, definition] as const])));
  const meters = table.definitions.filter((definition): definition is DefinitionOf<'meter'> => isDefinitionOf(definition, 'meter'));
  const model: Model = { header, declarations, definitions: table.definitions, meters, references, meaning };
  const nodes = nodeIndex([...headers, ...declarations.map(({ node }) => node)]);
  const whole = !hasErrors(shelf.diagnostics);
  const found = rules.flatMap((rule) => rule.check({ model, table, headers, nodes, whole }));
  return { model, diagnostics: collect(shelf.diagnostics, found), sources: shelf.sources };
}

/**
 * A checked model made into its rule graph.
 */
import type { SourceText } from '../base/source-text.js';
import { type Digest, sha256 as ours } from '../base/sha256.js';
import type { Checked, CheckOptions } from '../check/check.js';
import type { Model } from '../check/model.js';
import { collect, hasErrors } from '../diagnostics/collect.js';
import { sealed } from '../graph/fingerprint.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { HeaderNode } from '../syntax/tree.js';
import type { CompileByWeek } from './by-week.js';
import { checkGraph } from './graph-checks.js';
import type { GraphCheck } from './graph-finding.js';
import { compileEvents, compileMeters, compileNamed, compileStops, compileSupplies } from './machine.js';
import { compileTasks } from './task.js';
import { workshop, type Workshop } from './workshop.js';

/** What `compile` may be given besides the file and its loader. */
export interface CompileOptions extends CheckOptions {
  /** SHA-256 of a text's UTF-8 bytes, in hex, where the host has a quicker one than ours. */
  readonly sha256?: Digest;
}

/** The answer of `compile`: the rule graph, `null` where there are errors, and what is wrong. */
export interface Compiled extends Checked {
  /** Null if there is any error. */
  readonly graph: RuleGraph | null;
}

/** What makes those parts of a graph that a compiler may be made without; a schedule for it has nothing of the kind. */
export type GraphMakers = { readonly [K in 'gauges' | 'dipsticks' | 'defects' | 'access']?: (shop: Workshop) => RuleGraph[K] } & {
  readonly byWeek?: CompileByWeek;
};

const NO_ACCESS: RuleGraph['access'] = { parts: [], rest: {}, places: [], walks: [], steps: [], nevers: [] };

/** The rest of compiling, once the files are checked: the graph, and what `checks` find in it. */
export function graphFrom(
  checked: Checked,
  makers: GraphMakers,
  checks: readonly GraphCheck[],
  { sha256 = ours }: CompileOptions,
): Compiled {
  if (checked.model === null || hasErrors(checked.diagnostics)) return { ...checked, graph: null };
  const graph = graphOf(checked.model, checked.sources, makers, sha256);
  const found = checkGraph(graph, checked.sources, checks);
  const diagnostics = collect(checked.diagnostics, found);
  return { ...checked, diagnostics, graph: hasErrors(found) ? null : graph };
}

/**
 * The rule graph of a model without errors.
 *
 * @throws Error where the model has errors: see {@link compile}.
 */
export function graphOf(model: Model, sources: readonly SourceText[], makers: GraphMakers, sha256 = ours): RuleGraph {
  const shop = workshop(model, sources, makers.byWeek);
  const stops = compileStops(shop);
  const access = makers.access?.(shop) ?? NO_ACCESS;
  const tasks = compileTasks(shop);
  const graph: Omit<RuleGraph, 'fingerprint'> = {
    format: 'duewright-rule-graph',
    version: 1,
    schedule: scheduleOf(model.header),
    sources: sources.map(({ name, text }) => ({ path: name, fingerprint: sha256(text) })),
    meters: compileMeters(shop),
    gauges: makers.gauges?.(shop) ?? [],
    dipsticks: makers.dipsticks?.(shop) ?? [],
    duties: compileNamed(shop, 'duty'),
    attachments: compileNamed(shop, 'attachment'),
    events: compileEvents(shop),
    supplies: compileSupplies(shop),
    defects: makers.defects?.(shop) ?? [],
    stops,
    access,
    nodes: [...shop.nodes],
    tasks,
  };
  return sealed(graph, sha256);
}

function scheduleOf(header: HeaderNode): RuleGraph['schedule'] {
  const schedule: RuleGraph['schedule'] = { name: header.name.text, title: header.title.text, language: 1, fits: [], forAttachment: false };
  for (const clause of header.clauses) {
    if (clause.kind === 'language') schedule.language = clause.edition.value;
    if (clause.kind === 'edition') schedule.edition = { number: clause.number.value, date: clause.date.text, by: clause.by.text };
    if (clause.kind === 'for-attachment') schedule.forAttachment = true;
    if (clause.kind !== 'fits') continue;
    const serial = clause.serial === undefined ? {} : { serial: { from: clause.serial.from.value, to: clause.serial.to.value } };
    schedule.fits.push({ model: clause.model.text, ...serial });
  }
  return schedule;
}

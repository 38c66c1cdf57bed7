import { listed } from '../../../base/listed.js';
import { titledLike } from '../../../base/titled-like.js';
import { nearNames } from '../../../index.js';
import { notedEvents, type RuleGraph } from '../../../engine.js';
import { formatDate } from '../../../values/civil.js';
import type { Day } from '../../../values/moment.js';
import type { LooseDraft } from './loose-draft.js';

/** One name, what it should name, and the names that there are. */
interface Use {
  readonly kind: string;
  readonly name: string;
  readonly known: readonly Thing[];
}

interface Thing {
  readonly id: string;
  readonly title: string;
}

/** Things that are offered where none has a name like it. */
const MOST_OFFERED = 3;

/** Names that are all listed where none is like it. */
const MOST_LISTED = 5;

/**
 * One sentence for each name in a draft that the schedule does not have, with the nearest one that it has.
 *
 * @example nameProblems(graph, { kind: 'event', event: 'wheel-refi' })
 *   // ['There is no event `wheel-refi` in this schedule; did you mean `wheel-refit`?']
 */
export function nameProblems(graph: RuleGraph, draft: LooseDraft): readonly string[] {
  const on = graph.events.find((event) => event.id === draft.event && event.on !== undefined)?.on;
  if (on !== undefined)
    return [`\`${draft.event ?? ''}\` happens on ${formatDate(on as Day)} by itself, to every machine; nobody notes it.`];
  return uses(graph, draft)
    .filter(({ name, known }) => !known.some(({ id }) => id === name))
    .map(({ kind, name, known }) => `There is no ${kind} \`${name}\` in this schedule${meant(name, known)}`);
}

/** The nearest name; with none, those whose titles have the words. */
function meant(name: string, known: readonly Thing[]): string {
  const [near] = nearNames(
    name,
    known.map(({ id }) => id),
  );
  const offered =
    near === undefined
      ? titledLike(name, known)
          .slice(0, MOST_OFFERED)
          .map(({ id }) => id)
      : [near];
  if (offered.length > 0) return `; did you mean ${offered.map((id) => `\`${id}\``).join(' or ')}?`;
  return known.length === 0 || known.length > MOST_LISTED ? '' : `; it has ${listed(known.map(({ id }) => `\`${id}\``))}`;
}

function uses(graph: RuleGraph, draft: LooseDraft): readonly Use[] {
  const named = (kind: string, names: readonly (string | undefined)[], known: readonly Thing[]): readonly Use[] =>
    names.flatMap((name) => (name === undefined ? [] : [{ kind, name, known }]));
  const defect = graph.defects.find(({ id }) => id === draft.defect);
  const classes = defect?.classes.map(({ name, title }) => ({ id: name, title: title ?? name })) ?? [];
  return [
    ...named('task', [...(draft.tasks ?? []), draft.task], graph.tasks),
    ...named('meter', [...Object.keys(draft.meters ?? {}), ...Object.keys(draft.doneAt ?? {}), draft.meter], graph.meters),
    ...named('gauge or dipstick', Object.keys(draft.readings ?? {}), [...graph.gauges, ...graph.dipsticks]),
    ...named('supply', [...Object.keys(draft.used ?? {}), draft.supply], graph.supplies),
    ...named('dipstick', [draft.dipstick], graph.dipsticks),
    ...named(
      'duty',
      (draft.duties ?? []).map(({ duty }) => duty),
      graph.duties,
    ),
    ...named('attachment', [...(draft.attachments ?? []), draft.attachment], graph.attachments),
    ...named('event', [draft.event], notedEvents(graph)),
    ...named('defect', [draft.defect], graph.defects),
    ...named(`class of \`${draft.defect ?? ''}\` named`, [defect === undefined ? undefined : draft.class], classes),
  ];
}

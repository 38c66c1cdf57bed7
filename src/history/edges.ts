/**
 * What begins and ends spells: attachments put on and taken off, defects opened and closed, storage.
 */
import { ofKind } from './dated-entry.js';
import type { Dated } from './dated-entry.js';
import { gather } from '../base/gather.js';
import type { DefectEdge } from './read-defect.js';
import type { Edge } from './read-spells.js';
import type { ScheduleNames } from './schedule-names.js';
import type { StraySink } from './stray.js';

/** Attachment → when entries put it on and took it off; every attachment that the schedule has. */
export function attachmentEdges(dated: readonly Dated[], names: ScheduleNames, strays: StraySink): ReadonlyMap<string, readonly Edge[]> {
  const edges = new Map([...names.attachments.keys()].map((id): [string, Edge[]] => [id, []]));
  for (const { entry, when } of dated) {
    if (entry.kind !== 'attached' && entry.kind !== 'detached') continue;
    if (!strays.has(entry.id, 'attachment', entry.attachment, names.attachments)) continue;
    edges.get(entry.attachment)?.push({ entry: entry.id, when, edge: entry.kind === 'attached' ? 'begin' : 'end' });
  }
  return edges;
}

/** Storage begun and ended. */
export function storageEdges(dated: readonly Dated[]): readonly Edge[] {
  return ofKind(dated, 'storage').map(({ entry, when }) => ({ entry: entry.id, when, edge: entry.phase === 'begins' ? 'begin' : 'end' }));
}

/** Defect → when it was opened and closed: by an entry, or by doing a task that mends it or covers one that does. */
export function defectEdges(dated: readonly Dated[], names: ScheduleNames, strays: StraySink): ReadonlyMap<string, readonly DefectEdge[]> {
  const mended = mendedBy(names);
  return gatherEdges(
    dated.flatMap(({ entry, when }): readonly NamedEdge[] => {
      const end = (defect: string): NamedEdge => ({ defect, entry: entry.id, when, edge: 'end', class: null });
      if (entry.kind === 'done') return [...new Set(entry.tasks.flatMap((task) => mended.get(task) ?? []))].map(end);
      if (entry.kind !== 'defect-opened' && entry.kind !== 'defect-closed') return [];
      if (!strays.has(entry.id, 'defect', entry.defect, names.defects)) return [];
      if (entry.kind === 'defect-closed') return [end(entry.defect)];
      return [{ defect: entry.defect, entry: entry.id, when, edge: 'begin', class: knownClass(entry, names, strays) }];
    }),
  );
}

interface NamedEdge extends DefectEdge {
  readonly defect: string;
}

function gatherEdges(edges: readonly NamedEdge[]): ReadonlyMap<string, readonly DefectEdge[]> {
  const begun = new Set(edges.filter(({ edge }) => edge === 'begin').map(({ defect }) => defect));
  return gather(
    edges.filter(({ defect }) => begun.has(defect)),
    ({ defect }) => defect,
  );
}

function knownClass(
  entry: { readonly id: string; readonly defect: string; readonly class?: string | undefined },
  names: ScheduleNames,
  strays: StraySink,
): string | null {
  if (entry.class === undefined) return null;
  const classes = new Map(names.defects.get(entry.defect)?.classes.map((each) => [each.name, each]));
  return strays.has(entry.id, `class of \`${entry.defect}\` named`, entry.class, classes) ? entry.class : null;
}

/** Task → the defects that doing it mends: its own, and those of what it covers. */
export function mendedBy(names: ScheduleNames): ReadonlyMap<string, readonly string[]> {
  if (names.defects.size === 0) return new Map();
  const own = (task: string): readonly string[] => names.tasks.get(task)?.mends ?? [];
  return new Map([...names.tasks.values()].map((task) => [task.id, [task.id, ...task.covers].flatMap(own)]));
}

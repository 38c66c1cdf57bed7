/**
 * What a record must show besides of a defect, an attachment or storage that came and went more than once.
 *
 * An entry that is cited for something else, a meter's value say, may have begun an earlier spell. With the end of that spell left out, the last
 * one would seem to have begun then.
 */
import type { NodeId } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { DefectSpell, Spell } from '../history/timeline.js';
import type { Observation } from './assessment.js';
import { citedBy } from './cited-by.js';
import type { World } from './world.js';

/** The record with the ends of earlier spells that entries in it began. */
export function withEnds(world: World, record: readonly Observation[]): readonly Observation[] {
  const spells = record.map(({ node }) => [...everyStorage(world, node), ...spellsOf(world, node).slice(0, -1)]);
  if (spells.every(({ length }) => length === 0)) return record;
  const cited = citedBy(world, record);
  return record.map((seen, index) => {
    const ends = (spells[index] ?? []).flatMap((spell) => (spell.end !== null && begins(spell, cited) ? [spell.end.entry] : []));
    return ends.length === 0 ? seen : { ...seen, entries: [...new Set([...seen.entries, ...ends])] };
  });
}

function begins({ begin, class: noted }: Spell & Partial<Pick<DefectSpell, 'class'>>, cited: ReadonlySet<EntryId>): boolean {
  return cited.has(begin.entry) || (noted !== undefined && noted !== null && cited.has(noted.by.entry));
}

/** Of a limit that stands still in storage each storage counts or does not by its end, the last one too. */
function everyStorage({ index, timeline }: World, id: NodeId): readonly Spell[] {
  const node = index.graph.nodes[id];
  return node?.kind === 'interval' && node.standstill !== undefined ? timeline.storage : [];
}

function spellsOf({ index, timeline }: World, id: NodeId): readonly Spell[] {
  const node = index.graph.nodes[id];
  switch (node?.kind) {
    case 'attaching':
    case 'attachment-is':
      return timeline.attachments.get(node.attachment) ?? [];
    case 'defect-is':
      return timeline.defects.get(node.defect) ?? [];
    case 'asked':
      return node.by.is === 'defect' ? (timeline.defects.get(node.by.defect) ?? []) : [];
    case 'occasion':
      return node.of === 'storage' ? timeline.storage : [];
    default:
      return [];
  }
}

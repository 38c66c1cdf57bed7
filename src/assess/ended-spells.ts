/**
 * What a record must show besides of a defect, an attachment or storage that came and went more than once.
 *
 * An entry that is cited for something else, a meter's value say, may have begun an earlier spell. With the end of that spell left out, the last
 * one would seem to have begun then.
 */
import type { Node, NodeId } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import { mendedBy } from '../history/edges.js';
import type { DefectSpell, Spell, Stamped } from '../history/timeline.js';
import type { Observation } from './assessment.js';
import { citedBy } from './cited-by.js';
import type { World } from './world.js';

/** The record with the ends of earlier spells that entries in it began, where no other entry in it ended them besides. */
export function withEnds(world: World, record: readonly Observation[]): readonly Observation[] {
  const spells = record.map(({ node }) => ({ every: everyStorage(world, node), earlier: spellsOf(world, node) }));
  if (spells.every(({ every, earlier }) => every.length === 0 && earlier.length < 2)) return record;
  const cited = citedBy(world, record);
  return record.map((seen, index) => {
    const { every = [], earlier = [] } = spells[index] ?? {};
    const ends = [...every.flatMap((spell) => endOf(spell, cited)), ...endsOfEarlier(world, seen.node, earlier, cited)];
    return ends.length === 0 ? seen : { ...seen, entries: [...new Set([...seen.entries, ...ends])] };
  });
}

/** Of what came before the last spell, from the last backwards: what ended one would have ended those before it too. */
function endsOfEarlier(world: World, id: NodeId, spells: readonly Spell[], cited: ReadonlySet<EntryId>): readonly EntryId[] {
  const last = spells.at(-1)?.begin.when.day ?? -Infinity;
  const earlier = spells.slice(0, -1).filter((spell) => begins(spell, cited));
  if (earlier.length === 0) return [];
  const ends = [...spells.flatMap(({ end }) => end ?? []), ...mendings(world, id)];
  const known = ends.filter(({ entry, when }) => cited.has(entry) && when.day < last).map(({ when }) => when.day);
  return earlier.toReversed().flatMap((spell) => {
    if (known.some((day) => day > spell.begin.when.day)) return [];
    if (spell.end !== null) known.push(spell.end.when.day);
    return endOf(spell, cited);
  });
}

/** Doings that mend the defect that a rule goes by, whether or not it was open. */
function mendings({ index, timeline }: World, id: NodeId): readonly Stamped[] {
  const defect = defectOf(index.graph.nodes[id]);
  if (defect === null) return [];
  return [...mendedBy(index)].flatMap(([task, defects]) =>
    defects.some((each) => each === defect) ? (timeline.doings.get(task) ?? []) : [],
  );
}

function endOf(spell: Spell, cited: ReadonlySet<EntryId>): readonly EntryId[] {
  return spell.end !== null && begins(spell, cited) ? [spell.end.entry] : [];
}

function begins({ begin, class: noted }: Spell & Partial<Pick<DefectSpell, 'class'>>, cited: ReadonlySet<EntryId>): boolean {
  return cited.has(begin.entry) || (noted !== undefined && noted !== null && cited.has(noted.by.entry));
}

/** Of a limit that stands still in storage each storage counts or does not by its end, the last one too. */
function everyStorage({ index, timeline }: World, id: NodeId): readonly Spell[] {
  const node = index.graph.nodes[id];
  return node?.kind === 'interval' && node.standstill !== undefined ? timeline.storage : [];
}

function defectOf(node: Node | undefined): string | null {
  if (node?.kind === 'defect-is') return node.defect;
  return node?.kind === 'asked' && node.by.is === 'defect' ? node.by.defect : null;
}

function spellsOf({ index, timeline }: World, id: NodeId): readonly Spell[] {
  const node = index.graph.nodes[id];
  switch (node?.kind) {
    case 'attaching':
    case 'attachment-is':
      return timeline.attachments.get(node.attachment) ?? [];
    case 'defect-is':
    case 'asked':
      return timeline.defects.get(defectOf(node) ?? '') ?? [];
    case 'occasion':
      return node.of === 'storage' ? timeline.storage : [];
    default:
      return [];
  }
}

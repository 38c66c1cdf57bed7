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
  const spells = record.map(({ node }) => ({ every: everyStorage(world, node), past: pastSpells(world, node) }));
  if (spells.every(({ every, past }) => every.length === 0 && past.spells.length === 0)) return record;
  const cited = citedBy(world, record);
  return record.map((seen, index) => {
    const { every = [], past = NOTHING_PAST } = spells[index] ?? {};
    const ends = [...every.flatMap((spell) => endOf(spell, cited)), ...endsOfPast(world, seen.node, past, cited)];
    return ends.length === 0 ? seen : { ...seen, entries: [...new Set([...seen.entries, ...ends])] };
  });
}

/** Spells of which a rule says nothing, and the day on which that begins which it speaks of. */
interface Past {
  readonly spells: readonly Spell[];
  readonly until: number;
}

const NOTHING_PAST: Past = { spells: [], until: Infinity };

function pastSpells(world: World, id: NodeId): Past {
  const node = world.index.graph.nodes[id];
  const all = spellsOf(world, node);
  // Before storage it is enough that there is none now; other rules say of the last spell when it began, and ended.
  const isOver = node?.kind === 'occasion' && node.when === 'before' && all.at(-1)?.end != null;
  return isOver ? { spells: all, until: Infinity } : { spells: all.slice(0, -1), until: all.at(-1)?.begin.when.day ?? Infinity };
}

/** From the last of them backwards: what ended one would have ended those before it too. */
function endsOfPast(world: World, id: NodeId, { spells, until }: Past, cited: ReadonlySet<EntryId>): readonly EntryId[] {
  const begun = spells.filter((spell) => begins(spell, cited));
  if (begun.length === 0) return [];
  const ends = [...spells.flatMap(({ end }) => end ?? []), ...mendings(world, id)];
  const known = ends.filter(({ entry, when }) => cited.has(entry) && when.day < until).map(({ when }) => when.day);
  return begun.toReversed().flatMap((spell) => {
    if (known.some((day) => day > spell.begin.when.day)) return [];
    if (spell.end !== null) known.push(spell.end.when.day);
    return endOf(spell, cited);
  });
}

/** Doings that mend the defect that a rule goes by, whether or not it was open. */
function mendings({ index, timeline }: World, id: NodeId): readonly Stamped[] {
  const defect = defectOf(index.graph.nodes[id]);
  if (defect === null) return [];
  return [...mendedBy(index)].flatMap(([task, defects]) => (defects.includes(defect) ? (timeline.doings.get(task) ?? []) : []));
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

function spellsOf({ timeline }: World, node: Node | undefined): readonly Spell[] {
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

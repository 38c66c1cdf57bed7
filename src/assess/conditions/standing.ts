/** Conditions on how things stand: positions, attachments, defects, the duty of the work that is on. */
import type { AttachmentIsNode, DefectIsNode, DutyIsNode, PositionIsNode } from '../../graph/rule-graph.js';
import type { DefectSpell } from '../../history/timeline.js';
import type { Truth } from '../assessment.js';
import { classNames, missingClass, ofClass } from '../defect-class.js';
import { type Finding, found, unknown } from '../finding.js';
import { workOn } from '../occasions.js';
import { begunBy } from '../spells.js';
import type { World } from '../world.js';

/** Where a part was last left; at rest if nothing is on record. */
export function positionIs(world: World, node: PositionIsNode): Finding {
  const left = world.timeline.positions.get(node.part);
  const position = left?.position ?? world.index.graph.access.rest[node.part] ?? '';
  return found(position === node.position, left?.when ?? null, left === undefined ? [] : [left.entry], {
    is: 'position',
    position,
    atRest: left === undefined,
  });
}

/** On if an entry last put it on, or the intended outing names it. */
export function attachmentIs(world: World, node: AttachmentIsNode): Finding {
  const on = attachmentOn(world, node.attachment);
  return { ...on, truth: (on.truth === 'true') === node.on ? 'true' : 'false' };
}

/** Whether an attachment is on. */
export function attachmentOn(world: World, attachment: string): Finding {
  if (world.options.intent?.outing?.attachments?.includes(attachment) === true) return found(true, world.now, []);
  const spells = world.timeline.attachments.get(attachment);
  const spell = spells?.at(-1);
  if (spell === undefined) return found(false, null, []);
  if (spell.end === null) return found(true, spell.begin.when, begunBy(spells));
  return { ...found(false, spell.end.when, [...begunBy(spells), spell.end.entry]), stood: [{ on: 'moment', at: spell.begin.when }] };
}

/** Open or not; of a class; or of a later class than one. */
export function defectIs(world: World, node: DefectIsNode): Finding {
  const spells = world.timeline.defects.get(node.defect);
  const spell = spells?.at(-1);
  if (spell === undefined) return found(!node.open, null, []);
  if (spell.end !== null) {
    const note = { is: 'defect', class: null, since: spell.begin.when, closed: spell.end.when } as const;
    return found(!node.open, spell.end.when, [...begunBy(spells), spell.end.entry], note);
  }
  const truth = isSo(world, node, spell);
  const by = spell.class?.by ?? spell.begin;
  const entries = [...new Set([...begunBy(spells), by.entry])];
  const note = { is: 'defect', class: spell.class?.name ?? null, since: spell.begin.when } as const;
  if (truth === 'unknown') return { ...unknown(missingClass(node.defect), by.when, entries), note };
  return found((truth === 'true') === node.open, by.when, entries, note);
}

/** Whether an open defect is of the class that is asked for, or of a later one than that; true where no class is asked for. */
function isSo(world: World, node: DefectIsNode, spell: DefectSpell): Truth {
  const { class: wanted, worseThan } = node;
  if (wanted !== undefined) return ofClass(world, node.defect, spell, (name) => name === wanted);
  if (worseThan === undefined) return 'true';
  const classes = classNames(world, node.defect);
  return ofClass(world, node.defect, spell, (name) => classes.indexOf(name) > classes.indexOf(worseThan));
}

/** Whether the work that is on, or intended, is in a duty; when none is, the last outing that began on now's day: work is on until the day is over. */
export function dutyIs(world: World, node: DutyIsNode): Finding {
  const work = workOn(world, 'outing');
  if (work?.intended === true) return found(world.options.intent?.outing?.duties?.includes(node.duty) === true, world.now, []);
  const outing = work?.outing ?? world.timeline.outings.findLast(({ when }) => when.day === world.now.day);
  if (outing === undefined) return found(false, null, []);
  const inDuty = outing.duties.some((each) => each.duty === node.duty);
  return found(inDuty, outing.when, [outing.entry]);
}

/**
 * Tasks, and the stance at work, whose stance no steps lead to.
 */
import type { Origin } from '../graph/rule-graph.js';
import type { AccessFault } from './access-fault.js';
import { NOWHERE, ruleOf, wayTitles } from './fault-words.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import type { MachineSpace, PartGroup } from './machine-space.js';
import { askedOf } from './machine-space.js';
import { stancesOf } from './machine.js';
import { moveTitle } from './move-title.js';
import { notAttained } from './never-brought.js';
import type { StanceSet } from './stance-set.js';
import { whatBlocks } from './what-blocks.js';

/** One fault for each. `looks`: how many stances may be looked at, in all, to find out what is in the way. */
export function outOfReach(machine: Machine, space: MachineSpace, looks: number): readonly AccessFault[] {
  const { graph } = machine;
  const wanted = graph.tasks.flatMap((task) =>
    task.stance === undefined ? [] : [{ name: `\`${task.id}\``, at: task.origin, set: stancesOf(machine, task.stance) }],
  );
  // Where nothing is said of work, it is as at rest, which is reached.
  const atWork = [machine.work.map((position) => 1 << position)];
  wanted.push({ name: '`at work`', at: graph.access.parts[0]?.origin ?? NOWHERE, set: atWork });
  const sets = new Set(wanted.map(({ set }) => set));
  const groupOf = new Map([...sets].map((set) => [set, space.unreachableIn(set)]));
  const lost = wanted.flatMap((each) => {
    const group = groupOf.get(each.set) ?? null;
    return group === null ? [] : [{ ...each, group }];
  });
  const most = Math.floor(looks / lost.length);
  return lost.map(({ group, ...each }) => unreachable(machine, group, each, most));
}

interface Wanted {
  readonly name: string;
  readonly at: Origin;
  readonly set: StanceSet;
}

function unreachable(machine: Machine, group: PartGroup, { name, at, set }: Wanted, most: number): AccessFault {
  const kind = 'out-of-reach';
  const blocked = whatBlocks(machine, machine.rest, askedOf(machine, group, set), { moves: (part) => group.parts.has(part), most });
  if (blocked.kind === 'given-up') {
    const message = `${name} needs a stance that cannot be reached from rest.`;
    return { kind, at, message, way: [], help: 'Ask for another stance, or change the rules and steps that lead there.' };
  }
  if (blocked.kind === 'no-steps') return nowhere(machine, { name, at, set });
  const { step } = itemAt(machine.origins, blocked.move);
  const title = moveTitle(machine, blocked.move);
  const byNever = ruleOf(blocked.never);
  return {
    kind,
    at,
    message: `${name} needs a stance that cannot be reached from rest: ${byNever === undefined ? `"${title}" cannot be done` : `"${title}" would break a rule`}.`,
    way: [...wayTitles(machine, blocked.way), `blocked: ${title}`],
    help: 'Change the rule or the step that blocks the way, or add a step that leads round it.',
    rule: byNever ?? { at: step.origin, text: `"${title}" needs what cannot be had on the way` },
  };
}

function nowhere(machine: Machine, { name, at, set }: Wanted): AccessFault {
  const kind = 'out-of-reach';
  const forbidden = machine.graph.access.nevers.find(
    (_, index) =>
      set.length > 0 &&
      set.every((box) => itemAt(machine.nevers, index).some((wider) => box.every((mask, part) => (mask & ~(wider[part] ?? 0)) === 0))),
  );
  const rule = ruleOf(forbidden);
  if (rule !== undefined) {
    const message = `${name} needs a stance that a rule forbids.`;
    return { kind, at, message, way: [], help: 'Ask for another stance, or change the rule.', rule };
  }
  const message = `${name} needs a stance that no steps lead to.`;
  return { kind, at, message, way: [], help: `No steps lead there from rest: ${missingStep(machine, set)}.` };
}

function missingStep(machine: Machine, set: StanceSet): string {
  const box = set[0];
  if (box === undefined) return 'it asks for two positions of one part at a time, or for a position that there is not';
  const missing = notAttained(machine, box);
  return missing === null ? 'a step is missing' : `no step brings \`${missing.part}\` to \`${missing.position}\``;
}

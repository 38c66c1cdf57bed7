/**
 * Steps after which rest can no longer be reached.
 */
import type { AccessFault } from './access-fault.js';
import { ruleOf, stepRule, wayTitles } from './fault-words.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import type { MachineSpace, PartGroup } from './machine-space.js';
import { moveTitle } from './move-title.js';
import { whatBlocks } from './what-blocks.js';

/** `looks`: how many stances may be looked at, in all, to find out what is in the way.
 *
 * One fault for each way into trouble: the stance with the fewest steps, not each of the stances behind it. */
export function deadEnds(machine: Machine, space: MachineSpace, looks: number): readonly AccessFault[] {
  const ends = space.groups.filter((group) => group.space.isWhole).flatMap(waysIntoTrouble);
  const most = Math.floor(looks / ends.length);
  return ends.map((end) => deadEnd(machine, end, most));
}

/** A move after which there is no way back, from the first stance in which it can be made. */
interface WayIntoTrouble {
  readonly group: PartGroup;
  readonly from: number;
  readonly move: number;
  readonly to: number;
}

function waysIntoTrouble(group: PartGroup): readonly WayIntoTrouble[] {
  const { space } = group;
  const told = new Set<number>();
  const ways: WayIntoTrouble[] = [];
  for (let from = 0; from < space.size; from++) {
    if (!space.returns(from)) continue;
    const out = space.exits(from);
    for (let index = 0; index < out.length; index += 2) {
      const [move, to] = [out[index] ?? 0, out[index + 1] ?? 0];
      if (space.returns(to) || told.has(move)) continue;
      told.add(move);
      ways.push({ group, from, move, to });
    }
  }
  return ways;
}

function deadEnd(machine: Machine, { group, from, move, to }: WayIntoTrouble, most: number): AccessFault {
  const { space, parts } = group;
  const rest = [machine.rest.map((position) => 1 << position)];
  const found = whatBlocks(machine, space.stance(to), rest, { moves: (part) => parts.has(part), most });
  const blocked = found.kind === 'blocked' ? found : null;
  const rule = blocked === null ? undefined : (ruleOf(blocked.never) ?? stepRule(machine, blocked.move));
  return {
    kind: 'dead-end',
    at: itemAt(machine.origins, move).step.origin,
    message: `After "${moveTitle(machine, move)}" there is no way back to rest.`,
    way: [
      ...wayTitles(machine, space.wayTo(from)),
      moveTitle(machine, move),
      ...(blocked === null ? [] : [...wayTitles(machine, blocked.way), `blocked: ${moveTitle(machine, blocked.move)}`]),
    ],
    help:
      blocked === null
        ? 'Give the step a way back, or add a step that leads out of it.'
        : 'Let the step back be done in this stance, or keep the machine from getting into it.',
    ...(rule === undefined ? {} : { rule }),
  };
}

/**
 * Parts that have more stances together than are gone through.
 */
import type { AccessFault } from './access-fault.js';
import { itemAt } from './item-at.js';
import type { MachineSpace } from './machine-space.js';
import type { Machine } from './machine.js';

/** The one fault, which names the parts where they are not all of them. `space` must not be whole. */
export function tooManyStances(machine: Machine, space: MachineSpace): AccessFault {
  const { parts } = machine.graph.access;
  const passed = space.groups.filter((group) => !group.space.isWhole);
  const lost = parts.filter((_, index) => passed.some((group) => group.parts.has(index)));
  const names = lost.map((part) => `\`${part.id}\``);
  const listed = names.length > 6 ? `${names.slice(0, 5).join(', ')} and ${names.length - 5} more` : names.join(', ');
  const message =
    lost.length === parts.length
      ? 'The moving parts have more than 20,000 stances together: whether every task can be reached was not checked.'
      : `Of the moving parts, ${listed} have more than 20,000 stances together: whether what needs them can be reached was not checked.`;
  return {
    kind: 'too-many-stances',
    at: itemAt(lost, 0).origin,
    message,
    way: [],
    help: 'Tie the parts together with `while` conditions, or leave out parts that no task asks about.',
  };
}

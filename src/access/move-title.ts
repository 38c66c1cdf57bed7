import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';

/** What a person does in a move. */
export function moveTitle(machine: Machine, move: number): string {
  const { step, isBack } = itemAt(machine.origins, move);
  return isBack ? (step.back?.title ?? step.title) : step.title;
}

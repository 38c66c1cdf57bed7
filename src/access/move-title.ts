import type { Machine } from './machine.js';

/** What a person does in a move. */
export function moveTitle(machine: Machine, move: number): string {
  const origin = machine.origins[move];
  if (origin === undefined) return '';
  return origin.isBack ? (origin.step.back?.title ?? origin.step.title) : origin.step.title;
}

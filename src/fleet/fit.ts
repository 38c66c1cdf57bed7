/** Whether a schedule is made for a machine: `fits model "…" serial … to …`. */
import type { RuleGraph } from '../graph/rule-graph.js';
import { type LineProblem, lineProblem } from './line-problem.js';

/** What is wrong with the model that a line names; `null` where the schedule fits it, or names no models. */
export function modelProblem({ schedule: { fits } }: RuleGraph, model: string): LineProblem | null {
  if (fits.length === 0 || fits.some((each) => each.model === model)) return null;
  const models = [...new Set(fits.map((each) => `\`${each.model}\``))].join(', ');
  return lineProblem('other-model', `it is a \`${model}\`, and this schedule fits ${models}`);
}

/** What is wrong with a serial number; `null` where the schedule fits it, or any. */
export function serialProblem({ schedule: { fits } }: RuleGraph, serial: number): LineProblem | null {
  const ranges = fits.flatMap((each) => (each.serial === undefined ? [] : [each.serial]));
  if (ranges.length < fits.length || ranges.length === 0) return null;
  if (ranges.some(({ from, to }) => serial >= from && serial <= to)) return null;
  const known = ranges.map(({ from, to }) => `${from} to ${to}`).join(', ');
  return lineProblem('other-serial', `its serial number ${serial} is none of those that this schedule fits: ${known}`);
}

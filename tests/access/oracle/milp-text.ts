/* eslint-disable @typescript-eslint/no-non-null-assertion -- brute force is kept as plain as can be: a hole in an array would be a failing test */
/** An access problem without places, with one box to a condition, as an integer program in LP format. */
import type { AccessProblem } from '../../../src/access/problem.js';

export function milpText(problem: AccessProblem, slots: number): string {
  const rows: string[] = [];
  const binaries: string[] = [];
  const cost: string[] = [];
  const at = (part: number, position: number, slot: number): string => `p${part}_${position}_${slot}`;
  const add = (row: string): void => void rows.push(` c${rows.length}: ${row}`);
  const allowed = (mask: number, part: number, slot: number, sign: string): string =>
    Array.from({ length: problem.parts[part]! }, (_, position) => position)
      .filter((position) => (mask >> position) & 1)
      .map((position) => ` ${sign} ${at(part, position, slot)}`)
      .join('');
  const isFull = (mask: number, part: number): boolean => mask === 2 ** problem.parts[part]! - 1;
  for (let slot = 0; slot <= slots; slot++) {
    problem.parts.forEach((size, part) => {
      binaries.push(...Array.from({ length: size }, (_, position) => at(part, position, slot)));
      add(`${allowed(2 ** size - 1, part, slot, '+')} = 1`);
      if (slot === 0) add(`${at(part, problem.start.stance[part]!, 0)} = 1`);
      const goal = problem.goal[part];
      if (slot === slots && goal !== null) add(`${at(part, goal!, slots)} = 1`);
    });
  }
  for (let slot = 1; slot <= slots; slot++) {
    const acts = [...problem.moves.map((_, move) => `x${move}_${slot}`), ...problem.needs.map((_, need) => `d${need}_${slot}`)];
    binaries.push(...acts);
    if (acts.length > 0) add(`${acts.join(' + ')} <= 1`);
    problem.parts.forEach((size, part) => {
      for (let position = 0; position < size; position++) {
        const come = problem.moves.flatMap((move, index) => (move.part === part && move.to === position ? [` - x${index}_${slot}`] : []));
        const go = problem.moves.flatMap((move, index) => (move.part === part && move.from === position ? [` + x${index}_${slot}`] : []));
        add(`${at(part, position, slot)} - ${at(part, position, slot - 1)}${come.join('')}${go.join('')} = 0`);
      }
    });
    problem.moves.forEach((move, index) => {
      cost.push(`${move.seconds} x${index}_${slot}`);
      add(`x${index}_${slot} - ${at(move.part, move.from, slot - 1)} <= 0`);
      move.during[0]?.forEach((mask, part) => {
        if (!isFull(mask, part)) add(`x${index}_${slot}${allowed(mask, part, slot - 1, '-')} <= 0`);
      });
      for (const never of problem.nevers) {
        const named = never[0]!.flatMap((mask, part) => (isFull(mask, part) ? [] : [{ mask, part }]));
        add(`x${index}_${slot}${named.map(({ mask, part }) => allowed(mask, part, slot, '+')).join('')} <= ${named.length}`);
      }
    });
    problem.needs.forEach((need, index) => {
      cost.push(`${need.seconds} d${index}_${slot}`);
      need.stance[0]!.forEach((mask, part) => {
        if (!isFull(mask, part)) add(`d${index}_${slot}${allowed(mask, part, slot - 1, '-')} <= 0`);
      });
      for (const never of problem.nevers) {
        const named = never[0]!.flatMap((mask, part) => (isFull(mask, part) ? [] : [{ mask, part }]));
        add(`d${index}_${slot}${named.map(({ mask, part }) => allowed(mask, part, slot - 1, '+')).join('')} <= ${named.length}`);
      }
      for (const first of need.after) {
        const earlier = Array.from({ length: slot - 1 }, (_, before) => ` - d${first}_${before + 1}`);
        add(`d${index}_${slot}${earlier.join('')} <= 0`);
      }
    });
  }
  problem.needs.forEach((_, need) => add(`${Array.from({ length: slots }, (__, slot) => `d${need}_${slot + 1}`).join(' + ')} = 1`));
  return `Minimize\n obj: ${cost.length === 0 ? '0 p0_0_0' : cost.join(' + ')}\nSubject To\n${rows.join('\n')}\nBinary\n ${binaries.join('\n ')}\nEnd\n`;
}

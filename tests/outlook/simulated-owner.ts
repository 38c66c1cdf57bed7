import type { MeterTrack } from '../../src/history/timeline.js';
import type { Day } from '../../src/values/moment.js';
import type { RandomNumbers } from '../../src/outlook/random-numbers.js';
import { randomNumbers } from '../../src/outlook/random-numbers.js';

/** An invented owner: what the machine did every day, and what the owner wrote down of it. */
export interface Owner {
  /** Readings up to the day from which the future is to be told. */
  readonly track: MeterTrack;
  readonly now: Day;
  /** True life total in ticks at the end of each day from day 0. */
  readonly truth: readonly number[];
}

/** `jobs`: some days of hard work, then none for weeks. */
export type Habit = 'steady' | 'seasonal' | 'bursts' | 'jobs';

/** Days of a job, and of the time between two, at random about their means. */
function jobs(random: RandomNumbers): (day: number) => number {
  const [work, idle] = [3 + 6 * random.uniform(), 8 + 20 * random.uniform()];
  let [at, until] = [false, 0];
  return (day) => {
    if (day >= until) {
      at = !at;
      until = day + 1 + -Math.log(1 - random.uniform()) * (at ? work : idle);
    }
    return at ? 2 : 0;
  };
}

/** Simulates `before` days on record and `after` days to come. The generator shares nothing with the forecaster but uniform numbers. */
export function simulateOwner(seed: number, habit: Habit, before: number, after: number): Owner {
  const random = randomNumbers(seed * 7919 + habit.length);
  const hours = 0.5 + 5 * random.uniform();
  const often = 0.15 + 0.6 * random.uniform();
  const phase = random.uniform() * 365;
  const truth: number[] = [];
  const job = habit === 'jobs' ? jobs(random) : null;
  let [total, mood, year] = [100 * 36_000 * random.uniform(), 1, 1];
  for (let day = 0; day < before + after; day += 1) {
    if (day % 365 === 0) year = Math.exp(0.1 * random.normal());
    // Weeks of much and little work follow each other in runs.
    if (day % 7 === 0)
      mood = habit === 'bursts' ? (random.uniform() < 0.6 ? mood : 0.2 + 1.6 * random.uniform()) : 0.7 + 0.6 * random.uniform();
    const season = habit === 'seasonal' ? Math.max(0.05, 1 + 0.9 * Math.sin(((day + phase) / 365) * 2 * Math.PI)) : 1;
    if (job !== null) mood = job(day) / often;
    if (random.uniform() < Math.min(0.95, often * season * mood)) total += hours * year * (0.5 + random.uniform()) * 36_000;
    truth.push(total);
  }
  return { track: { points: readings(truth, before, random) }, now: (before - 1) as Day, truth };
}

function readings(truth: readonly number[], before: number, random: RandomNumbers): MeterTrack['points'] {
  const gap = 2 + Math.floor(random.uniform() * 15);
  const days: number[] = [];
  for (let day = 0; day < before; day += 1 + Math.floor(random.uniform() * 2 * gap)) days.push(day);
  return days.map((day) => {
    const total = Math.round(truth[day] ?? 0);
    return { entry: `r${day}`, when: { day: day as Day, minute: null }, total, shown: total / 36_000, alongside: [] };
  });
}

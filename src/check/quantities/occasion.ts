/**
 * The quantities of an occasion, in a task and in what an example names as a reason.
 */
import type { OccasionWhat } from '../../syntax/tree.js';
import type { Home, Model } from '../model.js';
import { delayOf } from './amount.js';
import { clockMinutesOf } from './clock-minutes.js';
import { problem, type Read } from './read.js';
import { ticked } from '../words.js';

/** As many as a rule waits for. */
const MOST_TIMES = 100;

/** The span of `within …`, by the clock before a start and of any kind after something, or how many times are asked for; none where it has neither. */
export function readingsInOccasion(model: Model, home: Home, what: OccasionWhat): readonly (Read<unknown> | undefined)[] {
  if (what.when === 'shortly-before') return [clockMinutesOf(what.within)];
  if (what.when === 'so-often') return [howOften(model, what)];
  return what.when === 'event' && what.within !== undefined ? [delayOf(model, home, what.within)] : [];
}

/** Once is `on`; what the schedule gives a day happens once. */
function howOften(model: Model, { event, times }: Extract<OccasionWhat, { when: 'so-often' }>): Read<number> {
  const node = model.meaning.get(event)?.node;
  const wrong = (message: string, help: string): Read<number> => problem('impossibleNumber', { at: times.at, message, help });
  const each = `Write \`on ${event.text}\`.`;
  if (node?.kind === 'event' && node.on !== undefined) return wrong(`${ticked(event.text)} happens once, on its day.`, each);
  if (times.value === 1) return wrong('After each time it is `on`.', each);
  if (times.value >= 2 && times.value <= MOST_TIMES) return { value: times.value };
  return wrong(`Nothing is asked for after ${times.text} times.`, `Write 2 to ${MOST_TIMES} times.`);
}

/**
 * Taking the value of something that a rule has vouched for.
 */
import type { Read } from './quantities/read.js';

/** @throws Error where there is no value although the schedule passed its checks: a bug of ours, for a rule should have said so. */
export function sound<T>(read: Read<T> | undefined): T {
  if (read !== undefined && 'value' in read) return read.value;
  throw new Error(`unchecked: ${read === undefined ? 'a name without meaning' : read.problem.message}`);
}

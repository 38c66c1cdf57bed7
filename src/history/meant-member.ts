import { nearName } from '../base/near-name.js';
import { type Entry, entryShape } from './entry.js';

/**
 * What a member that no entry of a kind has may have been meant to be; `null` where no name is near.
 *
 * @example meantMember('reading', 'meter') // 'meters'
 */
export function meantMember(kind: Entry['kind'], name: string): string | null {
  const shape = entryShape.of[kind];
  return nearName(name, shape?.is === 'object' ? Object.keys(shape.members) : []) ?? null;
}

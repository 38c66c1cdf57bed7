import { sha256 } from '../../base/sha256.js';
import type { Draft } from '../logbook/plan-append.js';
import { localMoment } from './local-moment.js';

/** What a feed calls a machine; any of them may be missing. */
export interface MachineNames {
  readonly make?: string;
  readonly model?: string;
  readonly equipmentId?: string;
  readonly serial?: string;
  readonly pin?: string;
}

/** The meters that a feed may carry, each of which can be taken over into a meter of the schedule. */
export type FeedMeter = 'operating-hours' | 'idle-hours' | 'distance-km';

/** One value of one meter of one machine, at an instant with an offset. */
export interface MeterSnapshot {
  readonly machine: MachineNames;
  readonly meter: FeedMeter;
  readonly value: number;
  readonly instant: string;
}

/** What a feed held: values, and what could not be used, each with the reason. */
export interface Feed {
  readonly snapshots: readonly MeterSnapshot[];
  readonly problems: readonly string[];
}

/** Which machine of a feed is meant, and which of its meters go where. */
export interface SnapshotTarget {
  /** Its serial number, PIN or equipment id, as the feed has it. */
  readonly machine: string;
  /** Feed meter → meter id in the schedule. */
  readonly meters: ReadonlyMap<FeedMeter, string>;
  /** IANA time zone where the machine stands; see `localMoment`. */
  readonly zone?: string;
}

/**
 * Readings for the logbook from a feed: one entry a value, with an id made from what it says, so that reading the same feed again
 * adds nothing. In the order of the feed.
 */
export function snapshotReadings(
  feed: Feed,
  target: SnapshotTarget,
): { readonly entries: readonly Draft[]; readonly problems: readonly string[] } {
  const problems = [...feed.problems];
  const entries = feed.snapshots.flatMap((snapshot): readonly Draft[] => {
    const meter = target.meters.get(snapshot.meter);
    if (meter === undefined || !isMeant(snapshot.machine, target.machine)) return [];
    const when = localMoment(snapshot.instant, target.zone);
    if (when !== null)
      return [
        {
          kind: 'reading',
          ...when,
          meters: { [meter]: snapshot.value },
          note: 'read from the machine’s telematics',
          id: feedId(snapshot, target),
        },
      ];
    problems.push(`\`${snapshot.instant}\` is not a date and time with an offset; the ${snapshot.meter} of ${snapshot.value} are left out`);
    return [];
  });
  return { entries, problems };
}

function isMeant({ serial, pin, equipmentId }: MachineNames, machine: string): boolean {
  return [serial, pin, equipmentId].includes(machine);
}

function feedId({ meter, instant, value }: MeterSnapshot, { machine }: SnapshotTarget): string {
  return `feed-${sha256(JSON.stringify([machine, meter, instant, value])).slice(0, 16)}`;
}

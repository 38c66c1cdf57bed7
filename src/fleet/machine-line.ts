/**
 * What a fleet is told of one machine, one JSON object a line: when it entered service, where its meters stand, and when each task
 * was last done (docs/fleets.md).
 */
import type { Entry } from '../history/entry.js';

/** The last doing of a task: the day, and the meters noted with it, in their units. */
export interface LastDoing {
  readonly on: string;
  readonly meters?: Readonly<Record<string, number>>;
}

/** A machine by its last doings. Days are ISO 8601 dates; a member that is left out is not known. */
export interface MachineLine {
  readonly machine: string;
  /** The day on which the meters were read; needed with `meters`. */
  readonly on?: string;
  readonly inService?: string;
  /** As the schedule names it in `fits model`; a machine of another model is refused. */
  readonly model?: string;
  readonly serial?: number;
  /** Meter → what it shows. */
  readonly meters?: Readonly<Record<string, number>>;
  /** Task → when it was last done. */
  readonly done?: Readonly<Record<string, LastDoing>>;
}

/** A machine by its whole logbook: the ordinary assessor answers for it, and takes its time. */
export interface MachineLogbook {
  readonly machine: string;
  readonly entries: readonly Entry[];
}

/**
 * The history that a line stands for: what the fleet answers for a machine is what `assess` answers for these entries.
 *
 * The ids are `machine`, `reading` and `done:` with the task.
 */
export function entriesOfLine(line: MachineLine): readonly Entry[] {
  const doings = Object.entries(line.done ?? {});
  const days = [line.on, line.inService, ...doings.map(([, doing]) => doing.on)].filter((day) => day !== undefined).sort();
  // A machine of which no day is known still has its serial number.
  const [earliest = '0001-01-01'] = days;
  const { inService, model, serial, meters, on } = line;
  return [
    {
      kind: 'machine',
      id: 'machine',
      on: earliest,
      ...(inService === undefined ? {} : { inService }),
      ...(model === undefined ? {} : { model }),
      ...(serial === undefined ? {} : { serial }),
    },
    ...(meters === undefined || on === undefined ? [] : [{ kind: 'reading' as const, id: 'reading', on, meters: { ...meters } }]),
    ...doings.map(([task, doing]): Entry => ({
      kind: 'done',
      id: `done:${task}`,
      on: doing.on,
      tasks: [task],
      ...(doing.meters === undefined ? {} : { meters: { ...doing.meters } }),
    })),
  ];
}

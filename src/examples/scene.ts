/**
 * A made-up stretch of history, as the lines of a worked example that nobody has written yet.
 */
import type { DuePoint } from '../assess/assessment.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import { formatDate } from '../values/civil.js';
import type { Day } from '../values/moment.js';
import { numberText } from '../values/number-text.js';
import { SERVICE_DAYS } from '../values/service-days.js';
import { unitsOf } from '../values/ticks.js';

/** One line: a day, a time where one matters, and acts in the words of the language. */
export interface SceneLine {
  readonly day: Day;
  readonly minute?: number;
  readonly acts: readonly string[];
}

export type Scene = readonly SceneLine[];

/** The scene as the text of an example; `expect` stands at its end. */
export function sceneText(title: string, scene: Scene, expect: string): string {
  const lines = scene.map(({ day, minute, acts }, index) => {
    const time = minute === undefined ? '' : ` ${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
    const last = index === scene.length - 1 && expect !== '' ? [expect] : [];
    return `  ${formatDate(day)}${time} ${[...acts, ...last].join('  ')}`.trimEnd();
  });
  return `example "${title.replace(/[\\"]/g, '')}"\n${lines.join('\n')}\n`;
}

/** A day so many days on. */
export function later(day: Day, days: number): Day {
  return (day + days) as Day;
}

/** One more line: what must be told for a point to be reached, and a little past it where `beyond`. Undefined where no act brings it about. */
export function reach(scene: Scene, point: DuePoint, graph: RuleGraph, beyond: boolean): Scene {
  const last = scene.at(-1)?.day ?? (0 as Day);
  switch (point.on) {
    case 'calendar':
      return [...scene, { day: later(point.day > last ? point.day : last, beyond ? 1 : 0), acts: [] }];
    case 'moment':
      return [
        ...scene,
        { day: point.at.day > last ? point.at.day : last, ...(point.at.minute === null ? {} : { minute: point.at.minute }), acts: [] },
      ];
    case 'work': {
      const duty = point.duty === null ? '' : ` in ${point.duty}`;
      return [...scene, { day: later(last, 1), acts: [`outing ${hours(point.ticks, beyond)} h${duty}`] }];
    }
    case 'meter': {
      const meter = graph.meters.find(({ id }) => id === point.meter);
      if (meter?.unit === SERVICE_DAYS) return [...scene, ...served(last, Math.max(1, unitsOf(point.ticks) + (beyond ? 1 : 0)))];
      if (meter?.fromOutings === true) return [...scene, { day: later(last, 1), acts: [`outing ${hours(point.ticks, beyond)} h`] }];
      const value = unitsOf(point.ticks) + (beyond ? 0.1 : 0);
      // No hour meter gains a day in a day.
      const days = Math.ceil(unitsOf(point.ticks) / 20) + 1;
      return [...scene, { day: later(last, Math.min(days, 400)), acts: [`${point.meter} ${numberText(value)} ${meter?.unit ?? 'h'}`] }];
    }
  }
}

/** So many days of service after a day, in one outing round the clock: one line, however many there are. */
function served(last: Day, days: number): Scene {
  return [
    { day: later(last, 1), minute: 0, acts: [`outing ${24 * days - 1} h`] },
    { day: later(last, days), acts: [] },
  ];
}

function hours(ticks: number, beyond: boolean): string {
  return numberText(Math.max(0.05, Math.ceil(unitsOf(ticks) * 20) / 20) + (beyond ? 0.1 : 0));
}

import type { Around } from './assess-task.js';
import { rest } from './rest.js';

/** A task for some serial numbers rests on other machines; one whose number nobody noted may be among them. */
export const ofSerials: Around = (world, task, within) => {
  const { serial } = world.timeline.machine;
  const isOther = task.serial !== undefined && serial !== null && (serial < task.serial.from || serial > task.serial.to);
  return isOther ? rest(task, 'serial') : within();
};

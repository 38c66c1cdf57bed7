/** Walk-rounds of the example machines that are kept as golden sheets. */
import type { WalkRoundOptions } from '../../src/access/plan-walk-round.js';

export interface Round {
  readonly name: string;
  readonly schedule: string;
  readonly tasks: readonly string[];
  readonly options: WalkRoundOptions;
}

const daily = ['walk-round', 'engine-oil-level', 'coolant-level', 'clean-radiator-screen', 'hydraulic-oil-level', 'start-lock', 'brakes'];

/** The hundred-hour service: what is done by then, most of it with the machine opened up. */
const hundredHours = [
  'engine-oil-level',
  'change-engine-oil',
  'grease-loader',
  'grease-chassis',
  'loader-pins',
  'drain-fuel-water-trap',
  'clean-air-filter',
  'check-drive-belt',
  'check-battery',
  'wheel-nuts',
  'tyre-pressures',
  'clutch-play',
  'brakes',
];

export const rounds: readonly Round[] = [
  { name: 'orchard-tractor-daily', schedule: 'orchard-tractor.due', tasks: daily, options: { end: 'work' } },
  { name: 'orchard-tractor-100-hours', schedule: 'orchard-tractor.due', tasks: hundredHours, options: { place: 'seat' } },
  {
    name: 'orchard-tractor-left-open',
    schedule: 'orchard-tractor.due',
    tasks: ['engine-oil-level', 'coolant-level'],
    options: { stance: { loader: 'blocked', guard: 'open' }, place: 'front' },
  },
  // The order of 29 CFR 1910.147(d), as a model: shut down, isolate, lock, release what is stored, verify, then work.
  {
    name: 'wood-chipper-lockout',
    schedule: 'wood-chipper.due',
    tasks: ['knife-look', 'turn-knives', 'set-knife-gap', 'roller-springs', 'drum-bearings'],
    options: { stance: { engine: 'running', pressure: 'held' }, place: 'panel-side' },
  },
];

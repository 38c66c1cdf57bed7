import type { MachineModel } from '../../src/history/schedule-names.js';
import type { Task } from '../../src/graph/rule-graph.js';

const origin = { source: 0, line: 1, column: 1, text: '' };
const site = { seconds: 0, under: [], cautions: [], qualified: false, tools: [], procedure: [] };

function task(id: string, more: Partial<Task> = {}): Task {
  const none = { reads: [], uses: [], torques: [], covers: [], restarts: [], follows: [], metBy: [], mends: [] };
  return { id, title: id, site, ...none, origin, ...more };
}

/** An invented orchard tractor with what the tests of histories need. */
export const tractor: MachineModel = {
  meters: [
    { id: 'engine', title: 'Hour meter', unit: 'h', fromOutings: false, origin },
    { id: 'road', title: 'Odometer', unit: 'km', fromOutings: false, origin },
    { id: 'work', title: 'Time out', unit: 'h', fromOutings: true, origin },
    { id: 'mower', title: 'Time mowing', unit: 'h', fromOutings: true, attachment: 'flail-mower', origin },
  ],
  gauges: [{ id: 'coolant', title: 'Coolant', unit: '°C', bands: [], origin }],
  dipsticks: [{ id: 'engine-oil', title: 'Engine oil', litres: 1.2, origin }],
  duties: [{ id: 'tall-growth', title: 'Tall growth', origin }],
  attachments: [{ id: 'flail-mower', title: 'Flail mower', origin }],
  events: [{ id: 'wheel-refit', title: 'Wheel refitted', origin }],
  supplies: [{ id: 'oil', title: 'Oil', unit: 'L', origin }],
  defects: [
    { id: 'seep', title: 'Seep', classes: [{ name: 'wetness' }, { name: 'drops-form' }, { name: 'drops-fall' }], rules: [], origin },
  ],
  access: {
    parts: [
      {
        id: 'loader',
        positions: [
          { name: 'lowered', aloft: false },
          { name: 'raised', aloft: true },
        ],
        origin,
      },
    ],
    rest: { loader: 'lowered' },
    places: [],
    walks: [],
    steps: [],
    nevers: [],
  },
  tasks: [task('change-oil'), task('tighten-fitting', { mends: ['seep'] }), task('overhaul', { covers: ['tighten-fitting'] })],
};

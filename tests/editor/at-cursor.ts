import { check } from '../../src/check/check.js';
import type { EditorView } from '../../src/editor/view.js';

/** A schedule to ask about, with something of every kind. */
export const machine = `schedule small-tractor "Small tractor"
  language 1
  edition 1 of 2026-01-01 by "Test bench"
  fits model "T"
meter engine "Hour meter" counts h
meter distance "Distance" counts km
gauge coolant "Coolant temperature" reads °C
  normal 75 to 90
  high above 97
dipstick oil "Engine oil dipstick" low to full is 1.2 L
duty dusty "Dry, dusty ground"
attachment mower "Mower" follows "mower.due"
position motor "Motor" stopped, running
position cover "Cover" closed, open
at rest motor stopped, cover closed
place seat "Seat"
place left "Left side"
walk seat to left 10 s
supply engine-oil "Engine oil" in L
hazard hot-oil warning "Hot oil burns."
event refit "A wheel was refitted"
defect seep "Seep" classes wet, drops-fall
  drops-fall hold "Drops fall." then top-up now
step open-cover "Open the cover" cover closed to open while motor is stopped takes 1 min at left beware hot-oil
step start "Start the motor" motor stopped to running takes 1 min at seat
task top-up "Top up"
  uses 0.5 L engine-oil
task oil-level "Check the oil"
  before each day's work
  only if coolant below high
  reads oil
    below low hold "Too low." then top-up now
    low to full fine
    above full fine
task oil-change "Change the oil"
  every 100 h of engine or 12 months, whichever first
  in dusty every 50 h of engine
  covers oil-level
task belt "Look at the belt of the mower"
  every 10 h of mower.rotor
  only if refit happened within 7 days
  every 500 km of distance
example "By hours"
  2026-03-02 engine 1200 h done oil-change
  2026-05-12 engine 1300 h expect oil-change due
`;

export const mower = `schedule mower "Mower" language 1
  for attachment
meter rotor "Rotor hours" counts h
task blades "Turn the blades"
  every 20 h of rotor
`;

/** A view on a text with `|` at the cursor, checked without it; other files by their paths. */
export function atCursor(
  marked: string,
  others: Readonly<Record<string, string>> = { 'mower.due': mower },
): { readonly view: EditorView; readonly offset: number } {
  const offset = marked.indexOf('|');
  const text = marked.replace('|', '');
  const checked = check('test.due', (path) => (path === 'test.due' ? text : others[path]));
  return { view: { checked, file: 0 }, offset };
}

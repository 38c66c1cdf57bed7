import { compileText } from '../../../support/compile-text.js';

/** A machine with one of each thing that can be recorded. */
export const tractor = compileText(`
meter engine "Hour meter on the dash" counts h
meter shaft "PTO hour counter" counts h
gauge coolant "Coolant temperature gauge" reads °C normal 75 to 90
dipstick engine-oil "Engine oil dipstick" low to full is 1.2 L
duty dusty "Dry, dusty ground"
duty tall-growth "Tall growth"
attachment mower "Flail mower"
supply oil-15w40 "Engine oil" in L
supply oil-filter "Engine oil filter" each
event wheel-refit "A wheel was refitted"
event recall "The maker has asked for it" on 2026-03-02
defect seep "Seep at a fitting" classes wetness, drops-form
task change-oil "Change the engine oil"
  every 100 h of engine or 12 months, whichever first
  uses 6.6 L oil-15w40, 1 oil-filter
  reason "Soot uses up the oil."
task oil-level "Check the engine oil level"
  before each day's work
  reads engine-oil
    below low hold "Top up first."
    low to full fine
    above full caution "Overfilled."
task grease "Grease the loader"
  every 6 months
`);

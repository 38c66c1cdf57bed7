/**
 * A schedule as long as an editor has to bear: a thousand tasks that differ in what they say, with what they speak of around them.
 */

const head = `schedule long-machine "Machine with a long schedule"
  language 1
  edition 1 of 2026-01-01 by "Test bench"
  fits model "Long 1000"
`;

/** Twenty of each thing that tasks speak of. */
function declared(): string {
  const all = Array.from({ length: 20 }, (_, n) => n);
  return [
    'meter engine "Hour meter" counts h',
    'meter shaft "Shaft hours" counts h',
    'duty dusty "Dry, dusty ground"',
    'position engine stopped, running',
    'position cover closed, open',
    'at rest engine stopped, cover closed',
    ...all.map((n) => `gauge temperature-${n} "Temperature ${n}" reads °C normal 75 to 90 high above 97`),
    ...all.map((n) => `dipstick oil-${n} "Dipstick ${n}" low to full is 1.2 L`),
    ...all.map((n) => `supply fluid-${n} "Fluid ${n}" in L`),
    ...all.map((n) => `event knock-${n} "Knock ${n}"`),
    ...all.map((n) => `defect seep-${n} "Seep ${n}"\n  classes wet, drops-fall\n  drops-fall hold "Drops fall."  then task-${n} now`),
    ...all.map((n) => `place side-${n} "Side ${n}"`),
    ...all.slice(1).map((n) => `walk side-${n - 1} to side-${n} 10 s`),
    'step open-cover "Open the cover" cover closed to open while engine is stopped takes 1 min at side-0',
    'step start-engine "Start the engine" engine stopped to running takes 1 min at side-1',
  ].join('\n');
}

/** One of eight shapes of task, as schedules have them. */
function task(n: number): string {
  const of = n % 20;
  const opening = `task task-${n} "Work number ${n}"`;
  const work = `  with engine is stopped, cover is open\n  takes ${(n % 9) + 1} min at side-${of}`;
  switch (n % 8) {
    case 0:
      return `${opening}\n  every ${100 + n} h of engine or ${(n % 11) + 2} months, whichever first\n  in dusty every ${50 + (n % 50)} h of engine\n  allow 10 h late\n${work}`;
    case 1:
      return `${opening}\n  before each day's work\n  reads oil-${of}\n    below low hold "Too low."  then task-${(n * 7) % 1000} now\n    low to full fine\n    above full caution "Overfilled."\n${work}`;
    case 2:
      return `${opening}\n  at 1 h, 10 h of engine after knock-${of}\n  every ${200 + n} h of engine\n  uses 0.${(n % 9) + 1} L fluid-${of}\n  do "Fill it to the edge."`;
    case 3:
      return `${opening}\n  when temperature-${of} above 97 °C\n  while seep-${of} is open every 4 h of shaft\n  reason "Heat spoils it."`;
    case 4:
      return `${opening}\n  every year on 1 November\n  unless seep-${of} worse than wet\n  source "Common practice, no source"`;
    case 5:
      return `${opening}\n  every ${300 + n} h of engine\n  covers task-${n - 1}\n  tighten "Bolts" to 210 N·m\n${work}`;
    case 6:
      return `${opening}\n  every 24 calendar months\n  first at 50 h of engine\n  warning "Hot oil burns."\n  needs "19 mm socket"`;
    default:
      return `${opening}\n  sooner at half the time that oil-${of} takes to fall to low\n  after storage\n  only if engine is stopped`;
  }
}

/** The whole text: ${'`count`'} tasks, a thousand unless told otherwise. */
export function thousandTasks(count = 1000): string {
  const tasks = Array.from({ length: Math.max(count, 20) }, (_, n) => task(n));
  const example = 'example "The first service"\n  2026-03-02 engine 1200 h  done task-0\n  2026-03-03 expect task-0 clear';
  return `${head}\n${declared()}\n\n${tasks.join('\n\n')}\n\n${example}\n`;
}

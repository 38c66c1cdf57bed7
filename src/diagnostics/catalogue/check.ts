/**
 * Problems of meaning: what `check` reports (DW2xx).
 */
import { catalogued, type Page } from '../catalogued.js';
import { checkCodes } from '../codes/check.js';

const pages = {
  fileNotFound: {
    title: 'A file that is not there',
    explanation:
      'A path in `use`, `varies` or `follows` is looked for in the folder of the file that names it; `.due` is added where the last part has no dot. Correct the path, or publish the missing file with the schedule.',
    wrong: 'use "common/deisel"',
    right: 'use "common/diesel"',
  },
  pathOutside: {
    title: 'A path that leaves the folder of its file',
    explanation:
      'A schedule may only name files in its own folder and below, written out with `/` between folders. That way it cannot reach for anything else on the computer of whoever opens it.',
    wrong: 'use "../shared/diesel"',
    right: 'use "shared/diesel"',
  },
  fileLoop: {
    title: 'Files that lead back to themselves',
    explanation:
      'Following `use`, `varies` and `follows` from file to file must come to an end. Take what both files need into a part that uses neither.',
    wrong: 'part a "A" use "b"   # and b uses "a"',
    right: 'part a "A" use "c"   # and b uses "c" too',
  },
  limitReached: {
    title: 'More files, rules or mistakes than the limit',
    explanation:
      'A schedule may be made of 32 files, lead from one to the next 8 deep, and hold 5,000 rules (a task counts once for each of its timing clauses, any other declaration once); it may have 200 places; what its tasks cover, and what that covers in turn, may come to 50,000; of its mistakes the first 100 are told. Thus one from outside cannot keep a program busy. The program that reads it can set other limits.',
    wrong: 'use "a"   # which uses "b", which uses "c", and so on, more than 8 deep',
    right: 'use "a" use "b" use "c"',
  },
  wrongRole: {
    title: 'A file of the wrong kind',
    explanation:
      '`use` takes a `part`, `varies` a schedule or a variant, `follows` a schedule `for attachment`. A part by itself says nothing about any machine.',
    wrong: 'use "tarn-55"   # a schedule',
    right: 'use "common/diesel"   # a part',
  },
  variantWithoutVaries: {
    title: 'A variant without a base, or a base without a variant',
    explanation:
      'A variant changes a few tasks of another schedule and has to say which with `varies`. A schedule or a part that has `varies` should begin with `variant`.',
    wrong: 'variant narrow "Narrow model" language 1',
    right: 'variant narrow "Narrow model" language 1 varies "tarn-55"',
  },
  missingLanguage: {
    title: 'No `language` in the header',
    explanation:
      'The edition of the language fixes what the words mean, so that a later edition can add words without changing a schedule that is in use.',
    wrong: 'schedule tractor "Tractor"',
    right: 'schedule tractor "Tractor" language 1',
  },
  unknownLanguage: {
    title: 'An edition of the language that does not exist',
    explanation: 'This program knows edition 1. A schedule for a later edition needs a later program; it is not guessed at.',
    wrong: 'language 2',
    right: 'language 1',
  },
  repeatedHeadClause: {
    title: 'A header clause that may stand once stands twice',
    explanation: 'There is one language, one edition and one base. Take one of the two out.',
    wrong: 'language 1 language 1',
    right: 'language 1',
  },
  missingFits: {
    title: 'The header does not say which machines it fits',
    explanation: 'Without `fits` an owner cannot be told that a schedule is for another model or another series of serial numbers.',
    wrong: 'schedule tractor "Tractor" language 1',
    right: 'schedule tractor "Tractor" language 1 fits model "Tarn 55"',
  },
  reversedSerials: {
    title: 'A range of serial numbers that ends before it begins',
    explanation: 'The lower number comes first; both ends belong to the range.',
    wrong: 'fits model "Tarn 55" serial 5899 to 1200',
    right: 'fits model "Tarn 55" serial 1200 to 5899',
  },
  unknownName: {
    title: 'A name that nothing has',
    explanation:
      "Every name has to be declared somewhere in the schedule or in a part that it uses. In an attachment's schedule names that are not found there are looked for on the machine.",
    wrong: 'every 100 h of engin',
    right: 'every 100 h of engine',
  },
  wrongKind: {
    title: 'A name of the wrong kind of thing',
    explanation:
      'The name exists, but what has it cannot stand in this place: a duty is not a task, an event is not a defect. Name a thing of the kind that is wanted.',
    wrong: 'covers dusty   # a duty',
    right: 'covers engine-oil-level   # a task',
  },
  duplicateName: {
    title: 'A name that is taken',
    explanation:
      'Within one schedule a name belongs to one thing of a kind, and what can be read or can be in a position shares its names. Rename one of the two.',
    wrong: 'gauge coolant "Coolant" reads °C  meter coolant "Coolant hours" counts h',
    right: 'gauge coolant "Coolant" reads °C  meter coolant-hours "Coolant hours" counts h',
  },
  qualifiedDeclaration: {
    title: 'A declared name with a dot',
    explanation:
      "The dot is for naming a thing of an attachment's schedule from outside: `flail-mower.rotor`. Where a thing is declared its name has no dot.",
    wrong: 'meter flail-mower.rotor "Rotor hours" counts h',
    right: 'meter rotor "Rotor hours" counts h   # in the flail mower\'s schedule',
  },
  misleadingName: {
    title: 'A name that already means something in its place',
    explanation:
      '`open` and `closed` say whether there is a defect at all, so no class can be called that. `work` in `of work` is time at work, so no meter can be called that. `machine` in `expect machine` is the whole machine, so no task can be called that.',
    wrong: 'defect seep "Seep" classes open, dripping',
    right: 'defect seep "Seep" classes wetness, dripping',
  },
  unknownWord: {
    title: 'A position, class, band or mark that its subject does not have',
    explanation:
      'What can stand after a name depends on what it names: the positions of a part, the classes of a defect (or `open`, `closed`), the bands of a gauge, `low` and `full` on a dipstick, `on` and `off` for an attachment, and for `expect machine` one of `ready`, `held`, `work-due-first`, `cannot-tell`.',
    wrong: 'with guard opened',
    right: 'with guard open',
  },
  unusedName: {
    title: 'Something that nothing uses',
    explanation: 'It may be left over, or a rule that should use it may be missing. Take it out, or use it.',
    wrong: 'duty dusty "Dusty ground"   # and no task says `in dusty`',
    right: 'task filter "Clean the filter" in dusty every 50 h of engine',
  },
  changeOutsideVariant: {
    title: '`change` or `remove` outside a variant',
    explanation: 'Only a variant has a base whose tasks it can change. In a schedule, edit the task itself.',
    wrong: 'schedule tractor "Tractor" remove task grease',
    right: 'variant narrow "Narrow model" varies "tarn-55" remove task grease',
  },
  changeOfMissingTask: {
    title: 'A change of a task that the base does not have',
    explanation: '`change task` and `remove task` name a task of the base as the base names it.',
    wrong: 'remove task greas',
    right: 'remove task grease',
  },
  wrongUnit: {
    title: 'A unit that measures the wrong thing',
    explanation:
      "What is wanted is told from the place: a gauge's level in what the gauge reads, a span of a meter in what the meter counts, a torque in N·m or lbf·ft. Units of one kind are converted; others are never guessed at.",
    wrong: 'when coolant above 97 kPa',
    right: 'when coolant above 97 °C',
  },
  unknownUnit: {
    title: 'A unit that does not exist',
    explanation: 'The language knows a fixed list of units, so that a misspelt one is found and not taken for a new one.',
    wrong: 'every 100 hours of engine',
    right: 'every 100 h of engine',
  },
  impossibleDate: {
    title: 'A day or a time that does not exist',
    explanation:
      'Dates are ISO 8601 civil dates; a day of the month has to exist in that month in some year, and the time of day runs from 00:00 to 23:59.',
    wrong: 'edition 3 of 2026-02-30 by "Millrace"',
    right: 'edition 3 of 2026-02-28 by "Millrace"',
  },
  emptySpan: {
    title: 'A span of nothing or less',
    explanation: 'An interval, a margin or a period of freshness has to have some length; of zero it would be due for ever.',
    wrong: 'every 0 h of engine',
    right: 'every 100 h of engine',
  },
  unclearMeter: {
    title: 'Hours that do not say on what they count',
    explanation:
      'Hours without `of` count on the only hour meter that is read. Where there is none, or more than one, say which: `of engine`, or `of work` for time at work.',
    wrong: 'every 100 h   # with two hour meters',
    right: 'every 100 h of engine',
  },
  fractionalSpan: {
    title: 'Part of a day or of a month',
    explanation: 'The calendar counts in whole days and whole months. Write a finer span in the smaller unit.',
    wrong: 'every 1.5 months',
    right: 'every 45 days',
  },
  impossibleNumber: {
    title: 'A number that makes no sense in its place',
    explanation:
      'Percentages run from above 0 to 100 (in `look`, to below 100), amounts are more than nothing, `months` and `years` on marks come in whole numbers from 1, and no machine counts more than a hundred million of anything.',
    wrong: 'allow 110 % late',
    right: 'allow 10 % late',
  },
  bandGap: {
    title: 'Readings that fall into no band',
    explanation:
      'Every possible reading has to fall into exactly one of the bands of a task that sorts them, from the lowest to the highest, so that no reading is passed over in silence.',
    wrong: 'below low hold "Fill up."  above full caution "Overfilled."',
    right: 'below low hold "Fill up."  low to full fine  above full caution "Overfilled."',
  },
  bandOverlap: {
    title: 'A reading that falls into two bands',
    explanation: '`60 to 75` includes both 60 and 75. Where the next band begins at 75, write `60 to below 75`, or `above 75`.',
    wrong: '60 to 75 fine  75 to 90 caution "Warm."',
    right: '60 to below 75 fine  75 to 90 caution "Warm."',
  },
  bandOutOfOrder: {
    title: 'A band that ends before it begins',
    explanation: 'The lower level comes first. No reading is in a band written the other way round.',
    wrong: 'normal 90 to 75',
    right: 'normal 75 to 90',
  },
  bandWithoutEdge: {
    title: 'A band used as an edge that it does not have',
    explanation:
      '`above high` has no meaning if `high` itself goes up without end. The edges of named bands are numbers, so that none is defined by another.',
    wrong: 'high above 97   # and then: when coolant above high',
    right: 'when coolant is high',
  },
  neverDue: {
    title: 'A task that nothing ever makes due',
    explanation:
      'It has no interval, occasion or condition, and no reading, defect or other task asks for it, covers it or puts it in an order, so no owner will ever be told to do it.',
    wrong: 'task grease "Grease the pivots" takes 5 min',
    right: 'task grease "Grease the pivots" every 50 h of engine takes 5 min',
  },
  neverGoverns: {
    title: 'A limit that another always comes before',
    explanation:
      "Of two limits on one axis, whichever first means the shorter and whichever last the longer; the other has no say. A duty's interval at least as long as the ordinary one changes nothing for the better.",
    wrong: 'every 100 h of engine or 200 h of engine, whichever first',
    right: 'every 100 h of engine or 12 months, whichever first',
  },
  firstAfterEvery: {
    title: 'A first time that is both sooner and later than the interval',
    explanation:
      'The first time may be shorter than the interval (a new engine) or longer (a new vehicle is tested after three years, then yearly). Shorter in hours and longer in months at once is hardly meant.',
    wrong: 'first at 50 h of engine or 24 months, whichever first every 100 h of engine or 12 months, whichever first',
    right: 'first at 50 h of engine or 6 months, whichever first every 100 h of engine or 12 months, whichever first',
  },
  stagesNotIncreasing: {
    title: 'Stages that do not rise',
    explanation: 'Stages are written from the first to the last, each later than the one before.',
    wrong: 'at 1 h, 50 h, 10 h of engine after wheel-refit',
    right: 'at 1 h, 10 h, 50 h of engine after wheel-refit',
  },
  mixedStages: {
    title: 'Stages on different meters',
    explanation:
      'One list of stages counts on one meter, or on the calendar. Write `first at 50 h of engine or 1 month, whichever first` where either will do.',
    wrong: 'first at 50 h of engine, 3 months',
    right: 'first at 50 h of engine or 3 months, whichever first',
  },
  allowanceTooLong: {
    title: 'An allowance or a lead as long as the interval',
    explanation: 'With such a margin the work would be in time, or coming up, for ever.',
    wrong: 'every 100 h of engine allow 100 h late',
    right: 'every 100 h of engine allow 10 h late',
  },
  dutyWithoutInterval: {
    title: "A duty's interval with nothing to shorten",
    explanation:
      '`in dusty every 50 h of engine` shortens the one ordinary interval on the same hour meter. The task has none on it, or more than one, or one that says `more than`.',
    wrong: 'in dusty every 50 h of engine',
    right: 'every 100 h of engine in dusty every 50 h of engine',
  },
  dutyNotOnHours: {
    title: "A duty's interval that is not on an hour meter",
    explanation: 'Only hours can be told apart by the duty in which they were worked; months and kilometres cannot.',
    wrong: 'in dusty every 6 months',
    right: 'in dusty every 50 h of engine',
  },
  countWithoutInterval: {
    title: 'A way of counting with no interval to count',
    explanation:
      '`count from` says where the next interval begins, and the task has no interval. Marks and occasions count for themselves.',
    wrong: "before each day's work count from due if late",
    right: 'every 100 h of engine count from due if late',
  },
  marginWithoutLimit: {
    title: 'An allowance, lead or hold that no limit of the task can use',
    explanation:
      'A margin in hours goes with limits in hours, one in days with limits on the calendar. Here the task has no limit that the margin could belong to.',
    wrong: 'every 12 months allow 10 h late',
    right: 'every 12 months allow 14 days late',
  },
  contradiction: {
    title: 'A condition that can never hold',
    explanation: 'A part cannot be in two positions, nor a reading in two ranges that lie apart, at the same time.',
    wrong: 'only if coolant below 40 °C and coolant above 90 °C',
    right: 'only if coolant below 40 °C or coolant above 90 °C',
  },
  dutyTooFine: {
    title: 'Duty intervals that have no common measure',
    explanation:
      'Hours in several duties are added up exactly, as fractions of the common multiple of the intervals. With these numbers it is too large to be exact. Write rounder numbers.',
    wrong: 'every 100.0001 h of engine in dusty every 33.3337 h of engine',
    right: 'every 100 h of engine in dusty every 33.3 h of engine',
  },
  repeatedClause: {
    title: 'A clause that may stand once in a task stands twice',
    explanation: 'Only one of the two could count, and a reader would have to guess which. Take one out.',
    wrong: 'takes 5 min takes 10 min',
    right: 'takes 10 min',
  },
  firstOfMarks: {
    title: '`first at` something that is not a span',
    explanation: "The first time is a span from the machine's start: hours, days, months. Marks fall where they fall.",
    wrong: 'first at multiple of 250 h of engine',
    right: 'first at 250 h of engine',
  },
  multipleNotOnMeter: {
    title: 'Multiples of what is no meter',
    explanation: '`multiple of 250 h` counts the marks on a meter. For the calendar write `year on 1 November` or `month on day 15`.',
    wrong: 'every multiple of 6 months',
    right: 'every 6 months',
  },
  standstillMisplaced: {
    title: 'Storage left out of what it does not add to',
    explanation:
      '`not counting storage` adds the days in storage to a span of the calendar, counted from when the work was done. A meter and time at work stand still in storage of themselves; a `first at`, and a beat that is kept (`count from due …`), go on through it.',
    wrong: 'every 250 h of engine, not counting storage',
    right: 'every 92 days, not counting storage of 30 days or more',
  },
  happensByItself: {
    title: 'An event of a fixed day is noted',
    explanation:
      '`event recall "…" on 2026-03-02` happens to every machine on that day, and nobody notes it: neither an owner, whose entry would count for nothing, nor a worked example.',
    wrong: '2026-03-02 happens recall',
    right: '2026-03-02 expect recall-inspection due',
  },
  notFromOutings: {
    title: 'Counted from outings, which do not note it',
    explanation:
      'A meter `from outings` adds up the hours of the outings on record, or the days on which there were some. Kilometres, starts and the like stand on no outing: let somebody read that meter.',
    wrong: 'meter distance "Distance" counts km from outings',
    right: 'meter service "Days of service" counts service-days from outings',
  },
  oftenMisplaced: {
    title: 'So many times where it cannot be counted',
    explanation:
      '`5 years 2 times` asks for two doings in any five years. It counts from the first of the last two, on the calendar or a meter; not in a `first at`, in time at work, in duties, or with a beat that is kept (`count from due …`). How far apart they have to be is told in days, weeks, months or years.',
    wrong: 'every 10 h of work 2 times',
    right: 'every 5 years 2 times, 20 months apart',
  },
  dependenceCycle: {
    title: 'Tasks that depend on each other in a circle',
    explanation:
      'Following `covers`, `restarts`, `follows` or `met by` from task to task must come to an end. Take out one of the clauses on the way round.',
    wrong: 'task a "A" follows b  task b "B" follows a',
    right: 'task a "A"  task b "B" follows a',
  },
  askedInCircle: {
    title: 'A reading that asks for its own task at once',
    explanation: 'A task that asks for itself now is due again the moment it is done, as long as the reading says the same.',
    wrong: 'task level "Level" reads oil below low hold "Fill." then level now',
    right: 'task level "Level" reads oil below low hold "Fill." then top-up now',
  },
  countsFromItself: {
    title: 'A task that comes after its own doing',
    explanation:
      '`after` and `on` another task count from when that was last done. Where doing this task does the other one too (it is the same, covers it, or completes it as a part), each doing begins the count anew. Write `every …` for what comes round.',
    wrong: 'task belt "Tighten the belt" first at 1 h of engine after belt',
    right: 'task belt "Tighten the belt" first at 1 h of engine after new-belt',
  },
  weekdayUnclear: {
    title: 'A day of the week of which nobody can tell when it is',
    explanation:
      'A Monday that is named has to be one that everybody finds in the calendar: `month on the first Monday`, `year on the last Friday of March`, `2 weeks on Monday from 2026-03-02`, where the date is the first of them. Each week is `every Monday`.',
    wrong: 'every 2 weeks on Monday',
    right: 'every 2 weeks on Monday from 2026-03-02',
  },
  notAPosition: {
    title: 'A condition of access that is not about positions',
    explanation:
      'What a step or a task needs to be got at, and what must never be, is said in positions of moving parts only: the safe order is searched over those.',
    wrong: 'with coolant below 40 °C',
    right: 'with engine stopped   # and: only if coolant below 40 °C',
  },
  restIncomplete: {
    title: 'A part without a position at rest',
    explanation: 'Every moving part has one position when the machine is left, and the way round begins and ends there.',
    wrong: 'position loader lowered, raised   # and no `at rest`',
    right: 'at rest loader lowered',
  },
  restTwice: {
    title: 'A part with two positions at once',
    explanation: '`at rest` and `at work` give each part one position.',
    wrong: 'at rest loader lowered, loader raised',
    right: 'at rest loader lowered',
  },
  stepGoesNowhere: {
    title: 'A step from a position to itself',
    explanation: 'A step changes one part from one position to another.',
    wrong: 'step raise "Raise" loader lowered to lowered',
    right: 'step raise "Raise" loader lowered to raised',
  },
  walkRepeated: {
    title: 'A walk to where one is, or one that is given twice',
    explanation: 'There is one time for each pair of places, in either direction.',
    wrong: 'walk left to left 1 min',
    right: 'walk left to front 1 min',
  },
} satisfies Readonly<Record<keyof typeof checkCodes, Page>>;

/** Every problem that `check` can report. */
export const checkCatalogue = catalogued(checkCodes, pages);

/**
 * Problems that are found by going through every stance of the machine (DW4xx).
 */
import { catalogued, type Page } from '../catalogued.js';
import { accessCodes } from '../codes/access.js';

const pages = {
  outOfReach: {
    title: 'A stance that cannot be reached',
    explanation:
      'Every task has to be possible from rest: some chain of steps must lead to a stance in which its `with` holds, each step in a stance in which its own `while` holds, and none into a stance that a `never` forbids. The help shows how far one gets, and what blocks the next step.',
    wrong:
      'step open-hood "Open the hood" hood shut to open while engine running\nnever "Hood open, engine running" hood open and engine running',
    right:
      'step open-hood "Open the hood" hood shut to open while engine stopped\nnever "Hood open, engine running" hood open and engine running',
  },
  deadEnd: {
    title: 'Steps that lead into a dead end',
    explanation:
      'From every stance that can be reached there must be a way back to rest, so that nobody is left with a machine that cannot be put together again. The help shows the shortest way in, and what blocks the way out.',
    wrong: 'step cut-seal "Cut the seal" seal whole to cut one way',
    right: 'step cut-seal "Cut the seal" seal whole to cut back "Fit a new seal"',
  },
  forbiddenFromTheStart: {
    title: 'A machine at rest or at work that breaks a never-rule',
    explanation: 'What `never` forbids cannot be how the machine is left, or how it works. Either the rule or the stance is wrong.',
    wrong: 'at rest engine stopped, hood open\nnever "Hood open" hood open',
    right: 'at rest engine stopped, hood shut\nnever "Hood open" hood open',
  },
  idleStep: {
    title: 'A step that is of no use',
    explanation:
      'A step should either be possible and lie on a quickest way between rest, work and the tasks, or not be there: what nobody needs only makes the schedule harder to trust.',
    wrong: 'step open-flap "Open the flap" flap shut to open   # and no task asks for flap open',
    right: 'task look-inside "Look inside" with flap open',
  },
  underRaisedPart: {
    title: 'Work under or in a part that is raised and not blocked',
    explanation:
      'A person who is `under` a part, by a task, a step or its place, must not be so in any reachable stance in which that part is at a position called `aloft`. Parts held aloft are blocked or cribbed before anybody works under them (29 CFR 1926.600(a)(3)(i), as a model). Where it has to be so, `meant` says why.',
    wrong: 'task grease-pins "Grease the pins" with loader raised under loader',
    right: 'task grease-pins "Grease the pins" with loader blocked under loader',
  },
  noWayToWalk: {
    title: 'Places without a walk between them',
    explanation:
      'Once any walk is stated, every place that is used must be reached by stated walks. Nobody walks through a place that is under a part: such a place only begins or ends a walk.',
    wrong: 'walk seat to front 20 s   # and a task is done at rear',
    right: 'walk seat to front 20 s  walk seat to rear 30 s',
  },
  tooManyStances: {
    title: 'Too many stances to go through',
    explanation:
      'The checks of steps and stances go through every stance that can be reached, up to a limit. Beyond it they cannot promise anything, and say so.',
    wrong: '# fifteen parts, each free to move whatever the others do',
    right: '# parts that move only while others are somewhere, and only parts that a task asks about',
  },
  tangledCondition: {
    title: 'A stance that is too tangled to work with',
    explanation:
      'A condition on positions with very many alternatives cannot be searched. Say the same with fewer `or`s, or with a never-rule.',
    wrong: 'with (a on or b on) and (c on or d on) and …   # a dozen times',
    right: 'with a on, c on',
  },
} satisfies Readonly<Record<keyof typeof accessCodes, Page>>;

/** Every problem that `checkAccess` can report. */
export const accessCatalogue = catalogued(accessCodes, pages);

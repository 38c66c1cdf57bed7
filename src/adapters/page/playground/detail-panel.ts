/// <reference lib="dom" />
/**
 * What is looked at: why a task stands as it does, its rules drawn, or the walk-round.
 */
import { cautionList, deference } from '../view/caution-list.js';
import { element } from '../view/element.js';
import { showWhy, type WhyView } from '../view/why-view.js';
import { Tabs } from './tabs.js';
import type { WalkLineView, WalkView } from './walk-view.js';

type Look = 'why' | 'rules' | 'walk';
const LOOKS: readonly (readonly [Look, string])[] = [
  ['why', 'Why'],
  ['rules', 'Rules drawn'],
  ['walk', 'Walk-round'],
];

/** Owns what is shown in the panel. */
export class DetailPanel {
  private look: Look = 'why';
  private readonly shown: Record<Look, readonly Node[]> = {
    why: [element('p', { class: 'quiet' }, 'Choose a task to see why it stands as it does.')],
    rules: [element('p', { class: 'quiet' }, 'Choose a task to see its rules drawn.')],
    walk: [],
  };

  constructor(
    private readonly panel: HTMLElement,
    tabs: HTMLElement,
  ) {
    new Tabs(tabs, 'What to look at', panel.id, (id) => {
      this.look = id as Look;
      this.refresh();
    }).show(LOOKS, this.look);
    this.refresh();
  }

  task(why: WhyView, drawing: string): void {
    this.shown.why = [showWhy(why)];
    this.shown.rules = drawn(drawing);
    this.refresh();
  }

  walk(walk: WalkView): void {
    this.shown.walk = showWalk(walk);
    this.refresh();
  }

  private refresh(): void {
    this.panel.replaceChildren(...this.shown[this.look]);
    this.panel.setAttribute('aria-label', LOOKS.find(([id]) => id === this.look)?.[1] ?? '');
  }
}

/** The drawing out of its page: the figure, and the same in words. */
function drawn(page: string): readonly Node[] {
  const parsed = new DOMParser().parseFromString(page, 'text/html');
  // A drawing wider than its place can be scrolled, with the keyboard as well.
  parsed.querySelector('figure')?.setAttribute('tabindex', '0');
  return [...parsed.querySelectorAll('figure, section')].map((part) => document.adoptNode(part));
}

function showWalk({ head, warnings, lines }: WalkView): readonly Node[] {
  const list = (part: readonly WalkLineView[]): HTMLElement =>
    element('ol', { class: 'walk', start: part[0]?.number ?? 1 }, ...part.map(walkLine));
  const back = lines.findIndex(({ beginsBack }) => beginsBack);
  const [there, home] = back < 0 ? [lines, []] : [lines.slice(0, back), lines.slice(back)];
  return [
    deference(),
    ...warnings.map((text) => element('p', { class: 'why-hold' }, text)),
    ...head.map((text) => element('p', {}, text)),
    ...(there.length === 0 ? [] : [list(there)]),
    ...(home.length === 0 ? [] : [element('h3', {}, 'Putting the machine back'), list(home)]),
  ];
}

function walkLine({ kind, title, time, cautions, qualified, notes }: WalkLineView): HTMLElement {
  return element(
    'li',
    { class: kind },
    cautionList(cautions, qualified),
    element('p', { class: 'walk-title' }, title, time === '' ? null : element('span', { class: 'quiet' }, ` ${time}`)),
    ...notes.map((text) => element('p', { class: 'walk-note' }, text)),
  );
}

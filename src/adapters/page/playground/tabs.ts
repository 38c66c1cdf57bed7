/// <reference lib="dom" />
import { button } from '../view/element.js';

/** A row of tabs by the pattern of WAI-ARIA: one is chosen, arrow keys move, the chosen one takes the focus. */
export class Tabs {
  private chosen = '';

  constructor(
    private readonly root: HTMLElement,
    label: string,
    private readonly panel: string,
    private readonly choose: (id: string) => void,
  ) {
    root.setAttribute('role', 'tablist');
    root.setAttribute('aria-label', label);
    root.addEventListener('keydown', (event) => this.move(event));
  }

  show(tabs: readonly (readonly [id: string, words: string])[], chosen: string): void {
    this.chosen = chosen;
    this.root.replaceChildren(
      ...tabs.map(([id, words]) => {
        const isChosen = id === chosen;
        return button(words, () => this.pick(id), {
          role: 'tab',
          id: `${this.panel}-tab-${id.replace(/[^\w-]/g, '-')}`,
          'data-id': id,
          'aria-selected': String(isChosen),
          'aria-controls': this.panel,
          tabindex: isChosen ? 0 : -1,
        });
      }),
    );
  }

  pick(id: string): void {
    this.chosen = id;
    for (const tab of this.all()) {
      const isChosen = tab.dataset['id'] === id;
      tab.setAttribute('aria-selected', String(isChosen));
      tab.tabIndex = isChosen ? 0 : -1;
    }
    this.choose(id);
  }

  private all(): readonly HTMLElement[] {
    return [...this.root.querySelectorAll<HTMLElement>('[role=tab]')];
  }

  private move(event: KeyboardEvent): void {
    const tabs = this.all();
    const at = tabs.findIndex(({ dataset }) => dataset['id'] === this.chosen);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: tabs.length - 1 }[event.key];
    const next = to === undefined ? undefined : tabs[(to + tabs.length) % tabs.length];
    if (next === undefined) return;
    event.preventDefault();
    this.pick(next.dataset['id'] ?? '');
    next.focus();
  }
}

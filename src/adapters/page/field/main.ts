/// <reference lib="dom" />
/**
 * The script of the field page: reads the schedule and the logbook that stand in the page, and runs its screens.
 */
import { readEntries, type RuleGraph } from '../../../engine.js';
import { byId, button, element } from '../view/element.js';
import { deviceShelf } from './device-shelf.js';
import { dueScreen } from './due-screen.js';
import { Field } from './field.js';
import { handOverScreen } from './hand-over-screen.js';
import type { Screen } from './screen.js';
import { timerScreen } from './timer-screen.js';
import { walkScreen } from './walk-screen.js';
import { writeScreen } from './write-screen.js';

function start(): void {
  const graph = JSON.parse(byId('schedule', HTMLScriptElement).text) as RuleGraph;
  const { entries } = readEntries(byId('logbook', HTMLScriptElement).text);
  const field = new Field(graph, entries, deviceShelf(byId('page', HTMLElement).dataset['machine'] ?? graph.schedule.name));
  const write = writeScreen(field);
  const due = dueScreen(field, (task) => {
    write.begin(task);
    show(write);
  });
  const screens: readonly Screen[] = [due, walkScreen(field), timerScreen(field), write, handOverScreen(field)];
  const tabs = screens.map((screen) => button(screen.tab, () => show(screen), { 'data-screen': screen.id }));
  const sections = screens.map(({ id, title, body }) =>
    element(
      'section',
      { id, class: 'screen', 'aria-labelledby': `${id}-title` },
      element('h2', { id: `${id}-title`, tabindex: -1 }, title),
      ...body,
    ),
  );
  const show = (screen: Screen, focus = true): void => {
    screen.refresh();
    for (const section of sections) section.hidden = section.id !== screen.id;
    for (const tab of tabs) tab.setAttribute('aria-current', tab.dataset['screen'] === screen.id ? 'page' : 'false');
    if (!focus) return;
    scrollTo(0, 0);
    byId(`${screen.id}-title`, HTMLHeadingElement).focus({ preventScroll: true });
  };
  byId('screens', HTMLElement).replaceChildren(...sections);
  byId('tabs', HTMLElement).replaceChildren(...tabs);
  const waiting = button('', () => show(screens.at(-1) ?? due), { id: 'waiting' });
  byId('page-head', HTMLElement).append(waiting);
  const count = (): void => {
    const many = field.waiting.length;
    waiting.textContent = many === 0 ? 'Nothing to hand over' : `${many} not yet handed over`;
    waiting.dataset['many'] = String(many);
  };
  field.watch(() => {
    count();
    for (const screen of screens) if (sections.some(({ id, hidden }) => id === screen.id && !hidden)) screen.refresh();
  });
  count();
  show(due, false);
  // What is printed is what is so now, also on the sheets that are not on the screen.
  addEventListener('beforeprint', () => screens.slice(0, 2).forEach((screen) => screen.refresh()));
}

start();

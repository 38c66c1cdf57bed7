/// <reference lib="dom" />
/**
 * The script of the playground: the editor and the panels, and the worker that answers them.
 */
import { byId } from '../view/element.js';
import { AnswerPanel } from './answer-panel.js';
import { type Desk, isLogbook } from './desk.js';
import { DetailPanel } from './detail-panel.js';
import { Editor } from './editor.js';
import { inquirer } from './inquirer.js';
import { openFiles } from './open-files.js';
import { showProblems } from './problems-panel.js';
import { SupposingPanel } from './supposing-panel.js';
import { Tabs } from './tabs.js';
import type { Ask, Told } from './told.js';

function start(): void {
  const worker = workerFrom(byId('worker', HTMLScriptElement).text);
  const ask = (asked: Ask): void => worker.postMessage(asked);
  const status = byId('problem-count', HTMLElement);
  const speed = byId('speed', HTMLElement);
  const sent = new Map<number, number>();
  let edits = 0;
  const inquiries = inquirer(ask);
  const editor = new Editor(byId('editor', HTMLElement), {
    ...inquiries.events,
    edited: (path, text) => {
      edits += 1;
      sent.set(edits, performance.now());
      ask({ ask: 'edit', path, text, edit: edits });
    },
  });
  const files = new Tabs(byId('files', HTMLElement), 'Files', 'editor', (path) => editor.show(path));
  const supposing = new SupposingPanel((supposed) => ask({ ask: 'suppose', supposing: supposed }));
  const detail = new DetailPanel(byId('detail', HTMLElement), byId('looks', HTMLElement));
  let looked = false;
  const choose = (task: string | null): void => {
    looked = task !== null;
    if (task !== null) answers.mark(task);
    ask({ ask: 'look', task });
  };
  const answers = new AnswerPanel(byId('verdict', HTMLElement), byId('due', HTMLElement), choose);

  const open = (desk: Desk): void => {
    editor.open(desk.files);
    files.show(
      Object.keys(desk.files).map((path) => [path, nameOf(path)]),
      desk.main,
    );
    editor.show(desk.main);
    supposing.reset();
    looked = false;
    ask({ ask: 'open', desk });
  };

  worker.onmessage = ({ data }: MessageEvent<Told>) => {
    switch (data.told) {
      case 'problems':
        editor.setProblems(data.problems);
        showProblems(byId('problems', HTMLElement), status, data.problems, editor);
        document.documentElement.dataset['checked'] = String(data.edit);
        return;
      case 'answer': {
        answers.show(data.answer, data.behind);
        supposing.show(data.machine);
        const since = sent.get(data.edit);
        sent.clear();
        if (since !== undefined) speed.textContent = `answered in ${Math.round(performance.now() - since)} ms`;
        if (!looked) choose(data.answer.groups[0]?.rows[0]?.task ?? null);
        document.documentElement.dataset['answered'] = String(data.edit);
        return;
      }
      case 'no-answer':
        answers.none();
        return;
      case 'task':
        detail.task(data.why, data.drawing);
        return;
      case 'walk':
        detail.walk(data.walk);
        return;
      case 'completions':
      case 'hover':
        inquiries.answer(data);
        return;
    }
  };

  open(JSON.parse(byId('desk', HTMLScriptElement).text) as Desk);
  openFiles(() => Object.fromEntries(editor.paths.map((path) => [path, editor.text(path)])), open);
}

/** Pages from disk may not load a worker from a file; from a text of their own they may. */
function workerFrom(text: string): Worker {
  const url = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
  return new Worker(url);
}

/** Folders are told only where a name would be twice. */
function nameOf(path: string): string {
  return isLogbook(path) ? 'Logbook' : (path.split('/').at(-1) ?? path);
}

start();

/// <reference lib="dom" />
/**
 * The script of the playground: the editor and the panels, and the worker that answers them.
 */
import { assertNever } from '../../../base/assert-never.js';
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

/** Owns the page: its panels, its worker, and what is asked of whom. */
class Playground {
  private readonly worker = workerFrom(byId('worker', HTMLScriptElement).text);
  private readonly status = byId('problem-count', HTMLElement);
  private readonly speed = byId('speed', HTMLElement);
  /** When each edit that is not answered yet was sent. */
  private readonly sent = new Map<number, number>();
  private edits = 0;
  /** Whether somebody has chosen a task to look at. */
  private looked = false;
  private readonly inquiries = inquirer((asked) => this.ask(asked));
  private readonly editor = new Editor(byId('editor', HTMLElement), {
    ...this.inquiries.events,
    edited: (path, text) => this.edited(path, text),
  });
  private readonly files = new Tabs(byId('files', HTMLElement), 'Files', 'editor', (path) => this.editor.show(path));
  private readonly supposing = new SupposingPanel((supposing) => this.ask({ ask: 'suppose', supposing }));
  private readonly detail = new DetailPanel(byId('detail', HTMLElement), byId('looks', HTMLElement));
  private readonly answers = new AnswerPanel(byId('verdict', HTMLElement), byId('due', HTMLElement), (task) => this.choose(task));

  start(): void {
    this.worker.onmessage = ({ data }: MessageEvent<Told>) => this.hear(data);
    this.open(JSON.parse(byId('desk', HTMLScriptElement).text) as Desk);
    const { editor } = this;
    openFiles(
      () => Object.fromEntries(editor.paths.map((path) => [path, editor.text(path)])),
      (desk) => this.open(desk),
    );
  }

  private ask(asked: Ask): void {
    this.worker.postMessage(asked);
  }

  private edited(path: string, text: string): void {
    this.edits += 1;
    this.sent.set(this.edits, performance.now());
    this.ask({ ask: 'edit', path, text, edit: this.edits });
  }

  private choose(task: string | null): void {
    this.looked = task !== null;
    if (task !== null) this.answers.mark(task);
    this.ask({ ask: 'look', task });
  }

  private open(desk: Desk): void {
    this.editor.open(desk.files);
    this.files.show(
      Object.keys(desk.files).map((path) => [path, nameOf(path)]),
      desk.main,
    );
    this.editor.show(desk.main);
    this.supposing.reset();
    this.looked = false;
    this.ask({ ask: 'open', desk });
  }

  private hear(told: Told): void {
    switch (told.told) {
      case 'problems':
        this.editor.setProblems(told.problems);
        showProblems(byId('problems', HTMLElement), this.status, told.problems, this.editor);
        document.documentElement.dataset['checked'] = String(told.edit);
        return;
      case 'answer':
        return this.show(told);
      case 'no-answer':
        return this.answers.none();
      case 'task':
        return this.detail.task(told.why, told.drawing);
      case 'walk':
        return this.detail.walk(told.walk);
      case 'completions':
      case 'hover':
        return this.inquiries.answer(told);
      default:
        return assertNever(told);
    }
  }

  private show({ answer, behind, machine, edit }: Extract<Told, { readonly told: 'answer' }>): void {
    this.answers.show(answer, behind);
    this.supposing.show(machine);
    const since = this.sent.get(edit);
    this.sent.clear();
    if (since !== undefined) this.speed.textContent = `answered in ${Math.round(performance.now() - since)} ms`;
    if (!this.looked) this.choose(answer.groups[0]?.rows[0]?.task ?? null);
    document.documentElement.dataset['answered'] = String(edit);
  }
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

new Playground().start();

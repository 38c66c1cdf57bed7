/// <reference lib="dom" />
/**
 * The editor: one view, a state for each file.
 */
import { autocompletion, completionKeymap, type CompletionContext, type CompletionResult } from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { bracketMatching } from '@codemirror/language';
import { type Diagnostic, lintGutter, lintKeymap, setDiagnostics } from '@codemirror/lint';
import { EditorState, type Extension } from '@codemirror/state';
import { drawSelection, EditorView, highlightActiveLine, hoverTooltip, keymap, lineNumbers, type Tooltip } from '@codemirror/view';
import { isLogbook } from './desk.js';
import { scheduleLanguage } from './schedule-language.js';
import type { Problem } from './told.js';

/** What can be written at a place in a file. */
export type CompletionSource = (path: string, context: CompletionContext) => Promise<CompletionResult | null>;

export interface EditorEvents {
  readonly edited: (path: string, text: string) => void;
  readonly completion: CompletionSource;
  /** What is known of the word at an offset of the file that is shown. */
  readonly hover: (path: string, offset: number) => Promise<Tooltip | null>;
}

/** Owns the editor's view and the states of the files that are not shown. */
export class Editor {
  readonly view: EditorView;
  private readonly states = new Map<string, EditorState>();
  private shown = '';
  private problems: readonly Problem[] = [];

  constructor(
    parent: HTMLElement,
    private readonly events: EditorEvents,
  ) {
    this.view = new EditorView({ parent });
  }

  open(files: Readonly<Record<string, string>>): void {
    this.states.clear();
    this.shown = '';
    for (const [path, text] of Object.entries(files)) this.add(path, text);
  }

  add(path: string, text: string): void {
    this.states.set(path, EditorState.create({ doc: text, extensions: this.extensions(path) }));
  }

  get paths(): readonly string[] {
    return [...this.states.keys()];
  }

  text(path: string): string {
    return (path === this.shown ? this.view.state : this.states.get(path))?.doc.toString() ?? '';
  }

  show(path: string): void {
    const state = this.states.get(path);
    if (state === undefined || path === this.shown) return;
    if (this.shown !== '') this.states.set(this.shown, this.view.state);
    this.shown = path;
    this.view.setState(state);
    this.mark();
  }

  /** Puts the cursor where something stands. */
  goTo({ path, start, end }: Pick<Problem, 'path' | 'start' | 'end'>): void {
    this.show(path);
    const length = this.view.state.doc.length;
    const anchor = Math.min(start, length);
    this.view.dispatch({
      selection: { anchor, head: Math.min(end, length) },
      effects: EditorView.scrollIntoView(anchor, { y: 'center' }),
    });
    this.view.focus();
  }

  setProblems(problems: readonly Problem[]): void {
    this.problems = problems;
    this.mark();
  }

  /** Makes the edits of a fix, also in files that are not shown. */
  apply(edits: Problem['fixes'][number]['edits']): void {
    for (const path of new Set(edits.map((edit) => edit.path))) {
      const changes = edits.filter((edit) => edit.path === path).map(({ start, end, text }) => ({ from: start, to: end, insert: text }));
      if (path === this.shown) this.view.dispatch({ changes });
      else {
        const state = this.states.get(path)?.update({ changes }).state;
        if (state === undefined) continue;
        this.states.set(path, state);
        this.events.edited(path, state.doc.toString());
      }
    }
  }

  private mark(): void {
    const { state } = this.view;
    const length = state.doc.length;
    const marks = this.problems.filter(({ path }) => path === this.shown).map((problem) => this.diagnostic(problem, length));
    this.view.dispatch(setDiagnostics(state, marks));
  }

  private diagnostic({ start, end, severity, message, help, code, fixes }: Problem, length: number): Diagnostic {
    return {
      from: Math.min(start, length),
      to: Math.min(end, length),
      severity: severity === 'note' ? 'info' : severity,
      source: code,
      message: help === '' ? message : `${message} ${help}`,
      actions: fixes.map(({ title, edits }) => ({ name: title, apply: () => this.apply(edits) })),
    };
  }

  private extensions(path: string): Extension {
    const { completion, hover } = this.events;
    return [
      lineNumbers(),
      history(),
      drawSelection(),
      bracketMatching(),
      highlightActiveLine(),
      lintGutter(),
      // Tab stays free to leave the editor with; indenting means nothing here.
      keymap.of([...completionKeymap, ...lintKeymap, ...historyKeymap, ...defaultKeymap]),
      isLogbook(path)
        ? []
        : [
            scheduleLanguage(),
            autocompletion({ override: [(context) => completion(path, context)] }),
            hoverTooltip((_view, offset) => hover(path, offset)),
          ],
      EditorView.contentAttributes.of({ 'aria-label': `Text of ${path}`, tabindex: '0' }),
      EditorView.lineWrapping,
      EditorView.updateListener.of((update) => {
        if (update.docChanged && path === this.shown) this.events.edited(path, update.state.doc.toString());
      }),
    ];
  }
}

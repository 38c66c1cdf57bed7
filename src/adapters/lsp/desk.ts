/**
 * The schedules that are open in an editor, checked as they are typed.
 *
 * A file may be open and not saved, and it may be part of schedules that are not open: what is checked is each schedule that an open file
 * belongs to, with the texts as they stand on the screen.
 */
import { readdirSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { LiveCheck, compileChecked, parse, runExamples } from '../../index.js';
import type { Checked, Compiled, Diagnostic, ExamplesReport } from '../../index.js';
import { readText } from '../cli/read-text.js';
import { scheduleFiles } from '../cli/schedule-files.js';

/** One schedule under way. */
export interface Schedule {
  /** Absolute path of the file that it begins with. */
  readonly path: string;
  readonly checked: Checked;
}

interface Tracked {
  readonly live: LiveCheck;
  checked: Checked | undefined;
  settled: { readonly compiled: Compiled; readonly examples: ExamplesReport | null } | undefined;
}

/** How many files of a folder are looked at in search of the schedule that a part belongs to. */
const MOST_FILES = 200;

/** A class because the open texts are state that it owns. */
export class Desk {
  private readonly open = new Map<string, string>();
  private readonly tracked = new Map<string, Tracked>();
  private readonly roots = new Map<string, string>();

  /** @param folders absolute paths beyond which no schedule is looked for. */
  constructor(private readonly folders: () => readonly string[]) {}

  /** A file was opened or changed. */
  put(path: string, text: string): void {
    this.open.set(path, text);
    this.forget(path);
  }

  /** A file was closed: from now on it is what is on the disk. */
  close(path: string): void {
    this.open.delete(path);
    this.forget(path);
    const needed = new Set([...this.open.keys()].map((each) => this.rootOf(each)));
    for (const root of this.tracked.keys()) if (!needed.has(root)) this.tracked.delete(root);
  }

  /** A file changed on the disk, or may have. */
  forget(path: string): void {
    this.roots.clear();
    for (const [root, tracked] of this.tracked) if (root === path || this.holds(root, tracked, path)) this.spoil(tracked);
  }

  /** The schedule that an open file belongs to, checked as it now is. */
  scheduleOf(path: string): Schedule {
    const root = this.rootOf(path);
    return { path: root, checked: this.check(root) };
  }

  /** Every schedule that can be found that a file is part of: what is named in it may be named in all of them. */
  schedulesWith(path: string): readonly Schedule[] {
    const roots = new Set([this.rootOf(path), path, ...this.candidates(path).filter((each) => this.leadsTo(each, path))]);
    return [...roots].map((root) => ({ path: root, checked: this.check(root) }));
  }

  /** Every schedule that an open file belongs to, checked. */
  schedules(): readonly Schedule[] {
    const roots = new Set([...this.open.keys()].map((path) => this.rootOf(path)));
    return [...roots].map((path) => ({ path, checked: this.check(path) }));
  }

  /** A schedule compiled, with its examples run: more than can be done at each keystroke. */
  settle(root: string): { readonly compiled: Compiled; readonly examples: ExamplesReport | null } {
    const checked = this.check(root);
    const tracked = this.track(root);
    if (tracked.settled === undefined) {
      const compiled = compileChecked(checked);
      tracked.settled = { compiled, examples: runExamples(compiled) };
    }
    return tracked.settled;
  }

  /** What is wrong in it: by the check, and, once it has been compiled, by that too. */
  problemsOf({ path, checked }: Schedule): readonly Diagnostic[] {
    return this.tracked.get(path)?.settled?.compiled.diagnostics ?? checked.diagnostics;
  }

  /** The absolute path of one of a schedule's files. */
  pathOf({ path, checked }: Schedule, file: number): string {
    return file === 0 ? path : resolve(dirname(path), checked.sources[file]?.name ?? '');
  }

  /** Which of a schedule's files a path is; undefined if it is none of them. */
  fileOf(schedule: Schedule, path: string): number | undefined {
    const found = schedule.checked.sources.findIndex((_, index) => this.pathOf(schedule, index) === path);
    return found < 0 ? undefined : found;
  }

  /** The text of a file as it stands on the screen, or else on the disk. */
  textOf(path: string): string | undefined {
    const text = this.open.get(path);
    if (text !== undefined) return text;
    const read = readText(path);
    return read.ok ? read.value : undefined;
  }

  private check(root: string): Checked {
    const tracked = this.track(root);
    if (tracked.checked !== undefined) return tracked.checked;
    const files = scheduleFiles(root);
    const load = (name: string): string | undefined => {
      const text = this.open.get(resolve(dirname(root), name));
      return text ?? (name === files.name ? this.textOf(root) : files.load(name));
    };
    tracked.checked = tracked.live.check(files.name, load);
    return tracked.checked;
  }

  private track(root: string): Tracked {
    const known = this.tracked.get(root);
    if (known !== undefined) return known;
    const tracked: Tracked = { live: new LiveCheck(), checked: undefined, settled: undefined };
    this.tracked.set(root, tracked);
    return tracked;
  }

  private spoil(tracked: Tracked): void {
    tracked.checked = undefined;
    tracked.settled = undefined;
  }

  /** Also if the file is missing so far: it may have come into being. */
  private holds(root: string, { checked }: Tracked, path: string): boolean {
    if (checked === undefined) return false;
    const missing = checked.diagnostics.some(({ message }) => message.startsWith('There is no file'));
    return missing || this.fileOf({ path: root, checked }, path) !== undefined;
  }

  /** The file itself, unless it is a part, or an attachment's: then the first schedule found that it belongs to. */
  private rootOf(path: string): string {
    const known = this.roots.get(path);
    if (known !== undefined) return known;
    const root = this.belongs(path) ? (this.candidates(path).find((each) => this.leadsTo(each, path)) ?? path) : path;
    this.roots.set(path, root);
    return root;
  }

  private belongs(path: string): boolean {
    const header = parse(this.textOf(path)?.slice(0, 4000) ?? '').file?.header;
    return header?.role === 'part' || header?.clauses.some(({ kind }) => kind === 'for-attachment') === true;
  }

  private leadsTo(candidate: string, path: string): boolean {
    if (!/\b(?:use|follows|varies)\b/.test(this.textOf(candidate) ?? '')) return false;
    return this.fileOf({ path: candidate, checked: this.check(candidate) }, path) !== undefined;
  }

  /** Open schedules first, then those in the part's folder and in the folders above it. */
  private candidates(path: string): readonly string[] {
    const found = [...this.open.keys()];
    for (let folder = dirname(path); this.isWithin(folder); folder = dirname(folder)) found.push(...dueFiles(folder));
    return [...new Set(found)].filter((each) => each !== path && !this.belongs(each));
  }

  private isWithin(folder: string): boolean {
    return folder !== dirname(folder) && this.folders().some((each) => folder === each || folder.startsWith(`${each}/`));
  }
}

function dueFiles(folder: string): readonly string[] {
  try {
    const names = readdirSync(folder).filter((name) => name.endsWith('.due'));
    return names
      .sort()
      .slice(0, MOST_FILES)
      .map((name) => join(folder, name));
  } catch {
    return [];
  }
}

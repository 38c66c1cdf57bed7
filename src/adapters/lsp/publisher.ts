import type { Diagnostic, PublishDiagnosticsParams } from 'vscode-languageserver';
import type { Desk, Schedule } from './desk.js';
import { uriOf } from './file-uri.js';
import { toDiagnostic } from './to-lsp.js';

/** Tells the editor what is wrong in which file, and takes it back when it is not any more; nothing is told twice. */
export class Publisher {
  private told = new Map<string, string>();

  constructor(
    private readonly desk: Desk,
    private readonly send: (params: PublishDiagnosticsParams) => void,
  ) {}

  /** Publishes what all open schedules have wrong. A file that belongs to several has the problems of all, each once. */
  publish(): void {
    const now = new Map<string, Map<string, Diagnostic>>();
    for (const schedule of this.desk.schedules()) this.gather(schedule, now);
    for (const [uri, problems] of now) this.tell(uri, [...problems.values()]);
    for (const uri of this.told.keys()) if (!now.has(uri)) this.tell(uri, []);
  }

  private gather(schedule: Schedule, into: Map<string, Map<string, Diagnostic>>): void {
    const addressOf = (file: number): string => uriOf(this.desk.pathOf(schedule, file));
    const { sources } = schedule.checked;
    sources.forEach((_, file) => into.set(addressOf(file), into.get(addressOf(file)) ?? new Map<string, Diagnostic>()));
    for (const problem of this.desk.problemsOf(schedule)) {
      const told = toDiagnostic(sources, addressOf, problem);
      if (told !== undefined) into.get(addressOf(problem.at.file))?.set(JSON.stringify(told), told);
    }
  }

  private tell(uri: string, diagnostics: Diagnostic[]): void {
    const text = JSON.stringify(diagnostics);
    if ((this.told.get(uri) ?? '[]') === text && this.told.has(uri)) return;
    this.told.set(uri, text);
    this.send({ uri, diagnostics });
  }
}

/**
 * Golden cases of the command line as plain text:
 *
 *     ## what is shown
 *     $ NO_COLOR=1 duewright due tractor.due tractor.jsonl
 *     (what stands on the output)
 *     ! (each line of the error output, after an exclamation mark)
 *     [1]   (the exit code, where it is not 0)
 */
export interface CliCase {
  readonly name: string;
  readonly command: string;
  readonly env: Readonly<Record<string, string>>;
  readonly args: readonly string[];
  readonly expected: string;
}

/** Reads the cases of a file. @throws Error if one has no command: it would assert nothing. */
export function readCases(text: string): readonly CliCase[] {
  return text
    .split(/^## /m)
    .slice(1)
    .map((part) => {
      const [name = '', command = '', ...rest] = part.split('\n');
      if (!command.startsWith('$ ')) throw new Error(`the case "${name}" has no command`);
      const words: readonly string[] = command.slice(2).match(/"[^"]*"|\S+/g) ?? [];
      const at = words.indexOf('duewright');
      if (at < 0) throw new Error(`the case "${name}" does not run duewright`);
      const args = words.slice(at + 1).map((word) => word.replace(/^"(.*)"$/, '$1'));
      const env = Object.fromEntries(words.slice(0, at).map((word) => word.split('=', 2) as [string, string]));
      return { name, command, env, args, expected: rest.join('\n').trimEnd() };
    });
}

/** One run as the text that a case holds. */
export function shown({ code, out, err }: { readonly code: number | null; readonly out: string; readonly err: string }): string {
  const lines = [
    out.trimEnd(),
    ...err
      .trimEnd()
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => `! ${line}`),
  ];
  if (code !== 0) lines.push(`[${code ?? 'killed'}]`);
  return lines.filter((line) => line !== '').join('\n');
}

/** A whole file of cases. */
export function writeCases(head: string, cases: readonly (CliCase & { readonly actual: string })[]): string {
  return `${head}${cases.map(({ name, command, actual }) => `## ${name}\n${command}\n${actual}\n`).join('\n')}`;
}

import { renderCode } from '../../../render/code.js';
import { safeText } from '../../../render/safe-text.js';
import type { CommandHost } from '../command-host.js';
import { complain, noSuch } from '../complain.js';
import { exitCode } from '../exit-code.js';
import { styleFor, type StyleOptions } from '../style-for.js';

const examples = `
Examples:
  duewright explain DW112
  duewright explain`;

/** `duewright explain`: what a code of `check` means; without one, all of them. */
export function addExplain(host: CommandHost): void {
  host.program
    .command('explain')
    .summary('say what a code means that check reports')
    .description('Says what a CODE of `check` means and how to put it right; without one, lists them all.')
    .argument('[code]', 'a code, such as DW112')
    .option('--plain', 'neither colour nor signs beyond ASCII')
    .addHelpText('after', examples)
    .action((code: string | undefined, options: StyleOptions) => runExplain(host, code, options));
}

async function runExplain({ shell, end }: CommandHost, code: string | undefined, options: StyleOptions): Promise<void> {
  const { catalogue, catalogueEntry } = await import('../../../index.js');
  const codes = [...catalogue].sort((a, b) => (a.code < b.code ? -1 : 1));
  if (code === undefined) {
    shell.out(codes.map(({ code: each, severity, title }) => `${each}  ${severity.padEnd(7)}  ${title}\n`).join(''));
    return;
  }
  const entry = catalogueEntry(code.toUpperCase());
  if (entry !== undefined) {
    shell.out(`${renderCode(entry, styleFor(shell, options))}\n`);
    return;
  }
  complain(
    shell,
    noSuch(
      'code',
      safeText(code),
      codes.map((each) => each.code),
    ),
  );
  end(exitCode.usage);
}

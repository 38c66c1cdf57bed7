/** The pages know of everything that is there: commands, schemas, pages, scripts, folders. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { Command } from 'commander';
import { authoringCommands } from '../../src/adapters/cli/authoring-commands.js';
import { logbookCommands } from '../../src/adapters/cli/logbook-commands.js';
import { outlookCommands } from '../../src/adapters/cli/outlook-commands.js';
import { runCommandLine } from '../../src/adapters/cli/run-command-line.js';
import { memoryShell } from '../adapters/cli/memory-shell.js';

const root = new URL('../../', import.meta.url);
const text = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const names = (path: string, pattern: RegExp): readonly string[] => readdirSync(new URL(path, root)).filter((name) => pattern.test(name));

/** The commands as help lists them. */
async function commandsOfHelp(): Promise<readonly string[]> {
  const shell = memoryShell();
  await runCommandLine(['--help'], shell);
  const listed = shell.said.out.slice(shell.said.out.indexOf('Commands:'));
  return [...listed.matchAll(/^ {2}([a-z][a-z-]*) .*? {2,}\S/gm)].map(([, name = '']) => name);
}

test('docs/command-line.md lists every command, and none that is not there', async () => {
  const page = text('docs/command-line.md');
  const described = [...page.matchAll(/^duewright ([a-z-]+)/gm)].map(([, name = '']) => name);
  const commands = await commandsOfHelp();
  expect(commands.length).toBeGreaterThan(25);
  expect([...described].sort()).toEqual([...commands].sort());
});

test('every list of commands is part of what help lists', async () => {
  const program = new Command();
  const host = { program, shell: memoryShell(), end: () => undefined };
  for (const add of [...authoringCommands, ...logbookCommands, ...outlookCommands]) add(host);
  const commands = await commandsOfHelp();
  expect(program.commands.map((command) => command.name()).filter((name) => !commands.includes(name))).toEqual([]);
});

test('README.md names every page, and no page that is not there', () => {
  const linked = new Set([...text('README.md').matchAll(/\]\((docs\/[a-z-]+\.md)\)/g)].map(([, path = '']) => path));
  expect([...linked].sort()).toEqual(names('docs/', /\.md$/).map((name) => `docs/${name}`));
});

test('links between pages lead somewhere', () => {
  const broken = names('docs/', /\.md$/).flatMap((page) =>
    [...text(`docs/${page}`).matchAll(/\]\((?!https?:|#)([^)#\s]+)(?:#[^)]*)?\)/g)]
      .map(([, path = '']) => path)
      .filter((path) => !existsSync(new URL(path, new URL('docs/', root))))
      .map((path) => `${page}: ${path}`),
  );
  expect(broken).toEqual([]);
});

test('docs/contract.md names every schema', () => {
  const page = text('docs/contract.md').replace(/\{([a-z,-]+)\}\.schema\.json/g, (_all, list: string) =>
    list
      .split(',')
      .map((name) => `${name}.schema.json`)
      .join(' '),
  );
  expect(names('grammar/', /\.schema\.json$/).filter((name) => !page.includes(name))).toEqual([]);
});

test('DEVELOPERS.md names every folder of src and every script', () => {
  const page = text('DEVELOPERS.md');
  const folders = readdirSync(new URL('src/', root), { withFileTypes: true }).filter((entry) => entry.isDirectory());
  expect(folders.map(({ name }) => `\`src/${name}/\``).filter((name) => !page.includes(name))).toEqual([]);
  const { scripts } = JSON.parse(text('package.json')) as { readonly scripts: Readonly<Record<string, string>> };
  const told = (name: string): boolean => [`npm ${name}`, `npm run ${name}`].some((words) => page.includes(`\`${words}\``));
  expect(Object.keys(scripts).filter((name) => !told(name))).toEqual([]);
});

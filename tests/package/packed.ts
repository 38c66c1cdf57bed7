import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** Our package as it would be published, unpacked where projects that use it can be put beside it. */
export interface Packed {
  readonly folder: string;
  readonly tarball: string;
  /** Writes a project whose `node_modules` holds the unpacked package, and its dependencies as installed here; returns its folder. */
  readonly project: (name: string, files: Readonly<Record<string, string>>) => string;
  readonly remove: () => void;
}

/**
 * Packs what `npm run build` made and unpacks it: only what is listed in `files` is there, and only our own dependencies beside it.
 *
 * The dependencies are linked from this installation rather than fetched again, so that the test needs no network.
 */
export function packPackage(dependencies: readonly string[], tools: readonly string[]): Packed {
  const folder = mkdtempSync(join(tmpdir(), 'duewright-package-'));
  const [{ filename = '' } = {}] = JSON.parse(
    execFileSync('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', folder], { cwd: root, encoding: 'utf8' }),
  ) as readonly { filename?: string }[];
  const tarball = join(folder, filename);
  const unpacked = join(folder, 'node_modules', 'duewright');
  mkdirSync(unpacked, { recursive: true });
  execFileSync('tar', ['-xzf', tarball, '-C', unpacked, '--strip-components=1']);
  for (const name of [...dependencies, ...tools]) link(name, folder);
  return {
    folder,
    tarball,
    project: (name, files) => writeProject(join(folder, name), files),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** Links a package as installed here; the projects below `folder` find it as Node looks upwards. */
function link(name: string, folder: string): void {
  const at = join(folder, 'node_modules', name);
  mkdirSync(dirname(at), { recursive: true });
  symlinkSync(join(root, 'node_modules', name), at);
}

function writeProject(folder: string, files: Readonly<Record<string, string>>): string {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

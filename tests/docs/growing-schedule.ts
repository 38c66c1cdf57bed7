import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The guide as it stands. */
export function authorsGuide(): string {
  return readFileSync(fileURLToPath(new URL('../../docs/authors-guide.md', import.meta.url)), 'utf8');
}

/** The schedule as it stands after each of the guide's pieces: a declaration takes the place of the one that begins alike, or is added. */
export function stagesOf(markdown: string): readonly string[] {
  const declarations = new Map<string, string>();
  return [...markdown.matchAll(/^```duewright\n([\s\S]*?)^```$/gm)].map(([, piece = '']) => {
    for (const declaration of piece.split(/^(?=[a-z])/m).filter((text) => text.trim() !== '')) {
      declarations.set(keyOf(declaration), `${declaration.trimEnd()}\n`);
    }
    return [...declarations.values()].join('\n');
  });
}

/** An example has no name but its title. */
function keyOf(declaration: string): string {
  return /^(?:example "[^"]*"|\S+ \S+)/.exec(declaration)?.[0] ?? declaration;
}

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import { INITIAL, parseRawGrammar, Registry, type IGrammar } from 'vscode-textmate';

const PATH = 'grammar/duewright.tmLanguage.json';

/** Loads the highlighting into the engine that editors run it with. */
export async function loadHighlighting(): Promise<IGrammar> {
  await loadWASM(readFileSync(createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm')));
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: () => Promise.resolve(parseRawGrammar(readFileSync(PATH, 'utf8'), PATH)),
  });
  const grammar = await registry.loadGrammar('source.duewright');
  if (grammar === null) throw new Error('no grammar');
  return grammar;
}

/** A stretch of a line with the innermost of its scopes, without the name of the language; empty for plain text. */
export interface Painted {
  readonly text: string;
  readonly scope: string;
}

/** The parts of a text in order; white space by itself is left out. */
export function paint(grammar: IGrammar, text: string): readonly Painted[] {
  let state = INITIAL;
  return text.split('\n').flatMap((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    state = ruleStack;
    return tokens.flatMap(({ startIndex, endIndex, scopes }) => {
      const part = line.slice(startIndex, endIndex);
      const scope = scopes.length === 1 ? '' : (scopes.at(-1) ?? '').replace(/\.duewright$/, '');
      return part.trim() === '' ? [] : [{ text: part.trim(), scope }];
    });
  });
}

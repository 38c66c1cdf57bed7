/**
 * grammar/railroad.html: the published grammar as diagrams, one for each production.
 */
import { readFileSync } from 'node:fs';
// @ts-expect-error -- the package has no types
import * as railroad from '@prantlf/railroad-diagrams';
import { lexicalRules, type Ebnf, type Expression } from './ebnf.js';

interface Drawing {
  toString(): string;
}

type Draw = (...parts: readonly unknown[]) => Drawing;

const draw = railroad as Readonly<
  Record<
    'Diagram' | 'Sequence' | 'Choice' | 'Optional' | 'ZeroOrMore' | 'OneOrMore' | 'Terminal' | 'NonTerminal',
    new (...parts: readonly unknown[]) => Drawing
  >
>;
const make = (kind: keyof typeof draw): Draw => (...parts) => new draw[kind](...parts); // prettier-ignore

function drawn(each: Expression): Drawing {
  switch (each.kind) {
    case 'word':
      return make('Terminal')(each.text);
    case 'rule':
      return make('NonTerminal')(each.name, { href: `#${each.name}` });
    case 'sequence':
      return make('Sequence')(...each.parts.map(drawn));
    case 'choice':
      return make('Choice')(0, ...each.parts.map(drawn));
    case 'optional':
      return make('Optional')(drawn(each.part));
    case 'star':
      return make('ZeroOrMore')(drawn(each.part));
    case 'plus':
      return make('OneOrMore')(drawn(each.part));
  }
}

/** The whole page; it needs nothing else to be shown. */
export function railroadPage(rules: Ebnf): string {
  const style = readFileSync(new URL('../../node_modules/@prantlf/railroad-diagrams/railroad-diagrams.css', import.meta.url), 'utf8');
  const sections = [...rules].map(
    ([name, body]) => `<section id="${name}">\n<h2>${name}</h2>\n${make('Diagram')(drawn(body)).toString().trim()}\n</section>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>The Duewright language, edition 1: railroad diagrams</title>
<style>
body { font-family: system-ui, sans-serif; margin: 2rem; max-width: 75rem; }
section { overflow-x: auto; }
${style.trim()}
</style>
</head>
<body>
<h1>The Duewright language, edition 1</h1>
<p>Drawn from <code>duewright.ebnf</code>, which is normative and spells out the lexical rules: ${lexicalRules.map((each) => `<span id="${each}">${each}</span>`).join(', ')}.</p>
${sections.join('\n')}
</body>
</html>
`;
}

/**
 * Grammar, sixth layer: the title that every declared thing has, and what is done about a missing one.
 */
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import { ClauseGrammar } from './grammar-clauses.js';
import type { NameNode, TextNode } from './tree.js';

/** Reads titles. */
export abstract class TitleGrammar extends ClauseGrammar {
  /** Text, after the name that it explains. Without one the name itself serves, so that nothing else goes wrong for it. */
  protected readonly title = this.RULE('title', (name: NameNode): TextNode => {
    if (!this.RECORDING_PHASE && !this.sees(1, this.v.Text)) return this.missingTitle(name);
    return this.textNode(this.CONSUME(this.v.Text));
  });

  private missingTitle(name: NameNode): TextNode {
    const words = this.unquoted();
    const [first] = words;
    if (first === undefined) return this.noTitle(name);
    const at = this.since(first);
    const text = this.source.slice(at.start, at.end);
    this.pending.push(
      diagnose(syntaxCodes.titleMissing, {
        message: `The title of \`${name.text}\` stands without quotes.`,
        at,
        fixes: [{ grade: 'likely', title: 'Put it in quotes', edits: [{ at, text: `"${text}"` }] }],
      }),
    );
    return { kind: 'text', at, text };
  }

  private noTitle(name: NameNode): TextNode {
    const text = titleFrom(name.text);
    const at = { ...name.at, start: name.at.end };
    this.pending.push(
      diagnose(syntaxCodes.titleMissing, {
        message: `\`${name.text}\` has no title.`,
        at: name.at,
        help: 'After the name comes a title in quotes, for people to read.',
        fixes: [{ grade: 'possible', title: `Write "${text}"`, edits: [{ at, text: ` "${text}"` }] }],
      }),
    );
    return { kind: 'text', at, text };
  }
}

function titleFrom(name: string): string {
  const words = name.replace(/[.-]+/g, ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

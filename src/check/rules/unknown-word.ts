import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { ActNode, ExpectNode, FactNode, NameNode, StanceItemNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import type { Definition, Model } from '../model.js';
import { idIn, placed } from '../model.js';
import type { NameTable } from '../names.js';
import { diagnostic, rewrite } from '../report.js';
import type { NodeIndex } from '../walk.js';
import { listedShort, nearWord, ticked } from '../words.js';
import { classesOf, verdictWords, wordsOf } from '../words-of.js';

/** What stands after a name has to be one of the words that go with what it names. */
export const unknownWord: Rule = {
  codes: ['unknownWord'],
  scope: 'declaration',
  check: ({ model, table, nodes }) => [...wordsInUse(model, nodes), ...ruleWords(model, table), ...verdicts(nodes)],
};

function wordsInUse(model: Model, nodes: NodeIndex): readonly Diagnostic[] {
  const facts = nodes.all<Extract<FactNode, { kind: 'is' }>>('is');
  const worse = nodes.all<Extract<FactNode, { kind: 'worse' }>>('worse');
  const stances = nodes.all<StanceItemNode>('stance-item');
  const opens = nodes.all<Extract<ActNode, { kind: 'act-opens' }>>('act-opens');
  return [
    ...facts.flatMap(({ subject, word }) => judge(model.meaning.get(subject), word)),
    ...worse.flatMap(({ defect, than }) => judge(model.meaning.get(defect), than, true)),
    ...stances.flatMap(({ part, position }) => judge(model.meaning.get(part), position)),
    ...opens.flatMap(({ defect, class: found }) => (found === undefined ? [] : judge(model.meaning.get(defect), found, true))),
    ...placed(model, 'step').flatMap(({ node }) => [node.from, node.to].flatMap((word) => judge(model.meaning.get(node.part), word))),
  ];
}

/** The classes that a defect's own rules speak of. */
function ruleWords(model: Model, table: NameTable): readonly Diagnostic[] {
  return placed(model, 'defect').flatMap(({ node, home }) => {
    const definition = table.find('defect', idIn(home, node.name.text));
    return definition?.node === node ? node.rules.flatMap(({ name }) => judge(definition, name, true)) : [];
  });
}

function verdicts(nodes: NodeIndex): readonly Diagnostic[] {
  const expected = nodes.all<Extract<ExpectNode, { kind: 'expect-machine' }>>('expect-machine');
  return expected.flatMap(({ verdict }) =>
    verdictWords.includes(verdict.text) ? [] : [describe('The machine', verdict, verdictWords, undefined)],
  );
}

function judge(subject: Definition | undefined, word: NameNode, classOnly = false): readonly Diagnostic[] {
  if (subject === undefined) return [];
  const words = classOnly ? classesOf(subject) : wordsOf(subject);
  if (words === undefined || words.includes(word.text)) return [];
  return [describe(ticked(subject.name), word, words, subject)];
}

const wordKinds: Readonly<Record<string, string>> = { position: 'position', defect: 'class', gauge: 'band', dipstick: 'mark' };

function describe(subject: string, word: NameNode, words: readonly string[], definition: Definition | undefined): Diagnostic {
  const near = nearWord(word.text, words);
  const kind = wordKinds[definition?.kind ?? ''];
  const known = words.length === 0 ? 'It has none.' : `It can be ${listedShort(words, 'or')}.`;
  return diagnostic('unknownWord', {
    at: word.at,
    message: kind === undefined ? `${subject} cannot be ${ticked(word.text)}.` : `${subject} has no ${kind} ${ticked(word.text)}.`,
    labels: definition === undefined ? [] : [{ at: definition.at, text: 'declared here' }],
    help: near === undefined ? known : `Did you mean ${ticked(near)}? ${known}`,
    fixes: near === undefined ? [] : [rewrite('likely', word.at, near)],
  });
}

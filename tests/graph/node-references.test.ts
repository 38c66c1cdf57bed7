/** Which members of a node refer to others is said once more by the schema of graphs, in the description of each. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { conditionsIn, isCondition, partsOf, triggersIn } from '../../src/graph/node-references.js';
import type { Node } from '../../src/graph/rule-graph.js';

interface Member {
  readonly const?: string;
  readonly description?: string;
  readonly type?: string;
  readonly items?: Member;
}
interface Definition {
  readonly properties?: Readonly<Record<string, Member>>;
  readonly oneOf?: readonly { readonly $ref: string }[];
}
const schema = JSON.parse(readFileSync('grammar/rule-graph.schema.json', 'utf8')) as { definitions: Readonly<Record<string, Definition>> };

const kindOf = (definition: Definition | undefined): string => definition?.properties?.['kind']?.const ?? '';
const conditionKinds = new Set(
  schema.definitions['Condition']?.oneOf?.map(({ $ref }) => kindOf(schema.definitions[$ref.split('/').at(-1) ?? ''])),
);
const nodes = Object.values(schema.definitions).filter((each) => kindOf(each) !== '');

/** A node of a kind whose references are numbers from 7 on; all other members are words. */
function sample({ properties = {} }: Definition): { readonly node: Node; readonly triggers: number[]; readonly conditions: number[] } {
  const [triggers, conditions]: [number[], number[]] = [[], []];
  const node: Record<string, unknown> = { id: 99, kind: properties['kind']?.const };
  let next = 7;
  const reference = (description: string): number => {
    (description.includes('trigger') ? triggers : conditions).push(next);
    return next++;
  };
  for (const [name, member] of Object.entries(properties)) {
    if (name === 'id' || name === 'kind' || name === 'origin') continue;
    const said = (member.items ?? member).description ?? '';
    if (!/^A (trigger|condition) node\.$/.test(said)) node[name] = member.type === 'integer' ? 'a number' : 'word';
    else node[name] = member.items === undefined ? reference(said) : [reference(said), reference(said)];
  }
  return { node: node as unknown as Node, triggers, conditions };
}

test('the schema has kinds that refer to others', () => {
  expect(nodes.length).toBeGreaterThan(30);
  expect(nodes.filter((each) => partsOf(sample(each).node).length > 0).length).toBe(8);
});

describe.each(nodes.map((each) => [kindOf(each), each] as const))('%s', (kind, definition) => {
  const { node, triggers, conditions } = sample(definition);
  test('refers to just what the schema says, each of the right sort', () => {
    expect([...triggersIn(node)].sort()).toEqual(triggers.sort());
    expect([...conditionsIn(node)].sort()).toEqual(conditions.sort());
    expect([...partsOf(node)].sort()).toEqual([...triggers, ...conditions].sort());
  });
  test('is of the sort that the schema says', () => {
    expect(isCondition(node)).toBe(conditionKinds.has(kind));
  });
});

test('a `while` that names one node twice names it once as each', () => {
  const node = { id: 9, kind: 'while', condition: 3, then: 3 } as unknown as Node;
  expect([conditionsIn(node), triggersIn(node)]).toEqual([[3], [3]]);
});

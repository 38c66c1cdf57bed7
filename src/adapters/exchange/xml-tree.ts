import { SaxesParser } from 'saxes';

/** An XML document as plain data: an element with nothing but text is that text, repeated elements are a list, attributes begin with `@`. */
export type XmlTree = { readonly kind: 'tree'; readonly tree: object } | { readonly kind: 'refused'; readonly problem: string };

type Element = Map<string, unknown[]>;
const TEXT = '#text';
const DEEPEST = 100;
/** Elements and attributes together: a page of a feed has some hundred machines with some dozen values each. */
const MOST_PARTS = 50_000;

/**
 * Reads well-formed XML; names lose their prefix, values stay text, outer white space goes.
 *
 * Total and bounded: a document type is refused outright, so that no entity can grow or reach outside; so is nesting beyond 100, and more than 50,000 elements and attributes.
 *
 * @example readXmlTree('<a b="1"><c>2</c></a>') // { kind: 'tree', tree: { a: { '@b': '1', c: '2' } } }
 */
export function readXmlTree(xml: string): XmlTree {
  const root: Element = new Map();
  const open: Element[] = [root];
  let problem: string | undefined;
  const refuse = (what: string): void => void (problem ??= what);
  let parts = 0;
  const count = (): void => {
    parts += 1;
    if (parts > MOST_PARTS) refuse(`it has more than ${MOST_PARTS} elements and attributes`);
  };
  const parser = new SaxesParser();
  parser.on('error', ({ message }) => refuse(`it is not well-formed XML: ${message}`));
  parser.on('doctype', () => refuse('it declares a document type, which a feed has no need of'));
  parser.on('attribute', count);
  parser.on('opentag', ({ name, attributes }) => {
    count();
    if (open.length > DEEPEST) refuse(`its elements are nested more than ${DEEPEST} deep`);
    const element: Element = new Map(Object.entries(attributes).map(([key, value]) => [`@${localName(key)}`, [value]]));
    add(open.at(-1), localName(name), element);
    open.push(element);
  });
  parser.on('text', (text) => add(open.at(-1), TEXT, text));
  parser.on('cdata', (text) => add(open.at(-1), TEXT, text));
  parser.on('closetag', () => void open.pop());
  // In pieces, so that a document that is refused early is not read to its end.
  for (let at = 0; at < xml.length && problem === undefined; at += 65_536) parser.write(xml.slice(at, at + 65_536));
  if (problem === undefined) parser.close();
  return problem === undefined ? { kind: 'tree', tree: plain(root) as object } : { kind: 'refused', problem };
}

function add(element: Element | undefined, name: string, value: unknown): void {
  const values = element?.get(name);
  if (values === undefined) element?.set(name, [value]);
  else values.push(value);
}

function plain(element: Element): unknown {
  const text = (element.get(TEXT) ?? []).join('').trim();
  const members = [...element].filter(([name]) => name !== TEXT);
  if (members.length === 0 && element.has(TEXT)) return text;
  const values = members.map(([name, items]): [string, unknown] => [name, items.length === 1 ? plainItem(items[0]) : items.map(plainItem)]);
  return Object.fromEntries(text === '' ? values : [...values, [TEXT, text]]);
}

function plainItem(item: unknown): unknown {
  return item instanceof Map ? plain(item as Element) : item;
}

function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

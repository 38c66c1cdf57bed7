import type { CatalogueEntry, Code } from './catalogue-entry.js';

/** What a code's page says, besides the code. */
export type Page = Omit<CatalogueEntry, keyof Code>;

/** Codes with their pages. */
/* @__NO_SIDE_EFFECTS__ */
export function catalogued<K extends string>(
  codes: Readonly<Record<K, Code>>,
  pages: Readonly<Record<NoInfer<K>, Page>>,
): Readonly<Record<K, CatalogueEntry>> {
  const names = Object.keys(codes) as K[];
  return Object.fromEntries(names.map((name) => [name, { ...codes[name], ...pages[name] }])) as Record<K, CatalogueEntry>;
}

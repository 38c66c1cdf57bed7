import { readFileSync } from 'node:fs';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';

const ajv = new Ajv2020({ strict: false, allErrors: true });

/** Made once each. */
const validators = new Map<string, ValidateFunction>();

/** What a published schema holds against a value: the first few, each with its place; none where the value fits. */
export function objections(schema: string, value: unknown): readonly string[] {
  const validate = validators.get(schema) ?? ajv.compile(schemaOf(schema));
  validators.set(schema, validate);
  return validate(value) ? [] : (validate.errors ?? []).slice(0, 5).map(({ instancePath, message }) => `${instancePath} ${message ?? ''}`);
}

/** The draft that a schema names makes no difference to the words that ours use. */
function schemaOf(name: string): Readonly<Record<string, unknown>> {
  const text = readFileSync(new URL(`../../grammar/${name}.schema.json`, import.meta.url), 'utf8');
  const { $schema: _draft, ...schema } = JSON.parse(text) as Readonly<Record<string, unknown>>;
  return schema;
}

/**
 * JSON Schema of an exported TypeScript interface that is plain data: what programs are promised of our answers.
 *
 * Every object is closed, so that a field added to the type and not to the published schema fails the tests. Doc comments become
 * descriptions. A brand on a number is dropped. Named types go into `$defs`, each once.
 */
import ts from 'typescript';

/** Numbers that may stand at infinity inside, and are written as the logbook writes them. */
const beyondMarks = ['below-low', 'above-full'];

export class SchemaWriter {
  constructor(files) {
    this.program = ts.createProgram(files, {
      strict: true,
      target: ts.ScriptTarget.ES2023,
      module: ts.ModuleKind.NodeNext,
      noEmit: true,
      types: [],
    });
    this.checker = this.program.getTypeChecker();
  }

  /** The schema of one exported type. */
  write(file, name, { id, title }) {
    this.defs = {};
    const source = this.program.getSourceFile(file);
    const symbol = this.checker.getExportsOfModule(this.checker.getSymbolAtLocation(source)).find((each) => each.name === name);
    const root = this.object(this.checker.getDeclaredTypeOfSymbol(symbol));
    const defs = Object.fromEntries(Object.entries(this.defs).sort(([a], [b]) => (a < b ? -1 : 1)));
    return { $schema: 'https://json-schema.org/draft/2020-12/schema', $id: id, title, ...root, $defs: defs };
  }

  /** The schema of any type, by reference where it has a name of its own. */
  of(type) {
    const name = this.nameOf(type);
    if (name === undefined) return this.inline(type);
    if (!(name in this.defs)) {
      this.defs[name] = {};
      this.defs[name] = { ...this.described(type.aliasSymbol ?? type.symbol), ...this.inline(type) };
    }
    return { $ref: `#/$defs/${name}` };
  }

  nameOf(type) {
    const symbol = type.aliasSymbol ?? (type.isClassOrInterface() ? type.symbol : undefined);
    if (symbol === undefined || this.isArray(type) || (type.aliasTypeArguments?.length ?? 0) > 0) return undefined;
    if (['Array', 'ReadonlyArray', 'Record', 'Readonly', 'Pick', 'Partial', 'EntryOf'].includes(symbol.name)) return undefined;
    // Names of primitives (an entry's id, a day) say nothing that their description does not.
    return type.flags & (ts.TypeFlags.Object | ts.TypeFlags.Union | ts.TypeFlags.Intersection) ? symbol.name : undefined;
  }

  inline(type) {
    const { flags } = type;
    if (flags & ts.TypeFlags.StringLiteral || flags & ts.TypeFlags.NumberLiteral) return { const: type.value };
    if (flags & ts.TypeFlags.BooleanLiteral) return { const: this.checker.typeToString(type) === 'true' };
    if (flags & ts.TypeFlags.String) return { type: 'string' };
    if (flags & ts.TypeFlags.Number) return { type: 'number' };
    if (flags & ts.TypeFlags.Boolean) return { type: 'boolean' };
    if (flags & ts.TypeFlags.Null) return { type: 'null' };
    if (type.isUnion()) return this.union(type);
    if (type.isIntersection()) return this.intersection(type);
    if (this.isArray(type)) return { type: 'array', items: this.of(this.checker.getTypeArguments(type)[0]) };
    if (flags & ts.TypeFlags.Object) return this.object(type);
    throw new Error(`no JSON Schema for ${this.checker.typeToString(type)}`);
  }

  isArray(type) {
    return this.checker.isArrayType(type);
  }

  union(type) {
    const parts = type.types.filter((part) => !(part.flags & ts.TypeFlags.Undefined));
    const booleans = parts.filter((part) => part.flags & ts.TypeFlags.BooleanLiteral);
    const rest = booleans.length === 2 ? parts.filter((part) => !booleans.includes(part)) : parts;
    const literals = rest.filter((part) => part.flags & (ts.TypeFlags.StringLiteral | ts.TypeFlags.NumberLiteral));
    const others = rest.filter((part) => !literals.includes(part)).map((part) => this.of(part));
    const all = [
      ...(literals.length > 0 ? [{ enum: literals.map((part) => part.value) }] : []),
      ...others,
      ...(booleans.length === 2 ? [{ type: 'boolean' }] : []),
    ];
    return all.length === 1 ? all[0] : { anyOf: all };
  }

  /** A branded primitive is that primitive; an intersection of objects is one object with all their members. */
  intersection(type) {
    const primitive = type.types.find((part) => part.flags & (ts.TypeFlags.Number | ts.TypeFlags.String));
    return primitive === undefined ? this.object(type) : this.inline(primitive);
  }

  object(type) {
    const index = this.checker.getIndexInfoOfType(type, ts.IndexKind.String);
    const members = this.checker.getPropertiesOfType(type);
    if (index !== undefined && members.length === 0) return { type: 'object', additionalProperties: this.of(index.type) };
    const required = members.filter((member) => !(member.flags & ts.SymbolFlags.Optional)).map((member) => member.name);
    const properties = Object.fromEntries(members.map((member) => [member.name, this.member(member)]));
    return { type: 'object', properties, ...(required.length > 0 ? { required } : {}), additionalProperties: false };
  }

  member(symbol) {
    const type = this.checker.getNonNullableType(this.checker.getTypeOfSymbol(symbol));
    const declared = this.checker.getTypeOfSymbol(symbol);
    const nullable = declared.isUnion() && declared.types.some((part) => part.flags & ts.TypeFlags.Null);
    const schema = this.of(nullable ? type : declared);
    const whole = nullable ? { anyOf: [schema, { type: 'null' }] } : schema;
    const widened = symbol.getJsDocTags().some((tag) => tag.name === 'beyondMarks') ? { anyOf: [whole, { enum: beyondMarks }] } : whole;
    return { ...this.described(symbol), ...widened };
  }

  described(symbol) {
    const text = ts
      .displayPartsToString(symbol?.getDocumentationComment(this.checker) ?? [])
      .replace(/\s+/g, ' ')
      .trim();
    return text === '' ? {} : { description: text };
  }
}

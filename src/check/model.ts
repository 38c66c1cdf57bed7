/**
 * The checked model: every declaration of every file in its place, and for each name what it stands for.
 *
 * It is whole even for a schedule with mistakes, so that an editor can offer names, definitions and references while somebody
 * types; `compile` asks for it only when nothing is wrong.
 */
import type { Span } from '../base/span.js';
import type {
  AttachmentNode,
  DeclarationNode,
  DefectNode,
  DipstickNode,
  DutyNode,
  EventNode,
  GaugeNode,
  HazardNode,
  HeaderNode,
  MeterNode,
  NameNode,
  PlaceNode,
  PositionNode,
  StepNode,
  StopNode,
  SupplyNode,
  TaskNode,
} from '../syntax/tree.js';

/** Declarations that give something a name. */
export type NamingNode =
  | MeterNode
  | GaugeNode
  | DipstickNode
  | DutyNode
  | AttachmentNode
  | PositionNode
  | PlaceNode
  | StepNode
  | StopNode
  | SupplyNode
  | HazardNode
  | EventNode
  | DefectNode
  | TaskNode;

/** What a name can be the name of. */
export type NameKind = NamingNode['kind'];

/** Where a declaration belongs: the machine itself, or an attachment whose schedule is mounted on it. */
export interface Home {
  /** Attachment id, or the empty text for the machine. Ids of things declared here start with it and a dot. */
  readonly prefix: string;
  /** Where names that are not found here are looked for. */
  readonly host: Home | undefined;
}

export interface PlacedDeclaration {
  readonly node: DeclarationNode;
  readonly home: Home;
}

/** What a name stands for. */
export interface Definition {
  readonly kind: NameKind;
  /** Unique among its kind in the whole model: the name, after the attachment's and a dot where it is an attachment's own. */
  readonly id: string;
  readonly name: string;
  readonly title: string;
  /** The name where it is declared. */
  readonly at: Span;
  readonly node: NamingNode;
  readonly home: Home;
}

/** A name where it is used, the kinds of thing that can be meant there, and what it was found to mean. */
export interface Reference {
  readonly name: NameNode;
  readonly kinds: readonly NameKind[];
  readonly home: Home;
  readonly definition: Definition | undefined;
}

/** A schedule whose names are looked up and whose quantities are understood. */
export interface Model {
  /** The header of the file that was asked for. */
  readonly header: HeaderNode;
  /** In the order written: the machine's, then each attachment's. Variants are already worked in. */
  readonly declarations: readonly PlacedDeclaration[];
  readonly definitions: readonly Definition[];
  /** Those of the definitions that are meters: spans ask for them all the time. */
  readonly meters: readonly DefinitionOf<'meter'>[];
  readonly references: readonly Reference[];
  /** What a name in the tree stands for; undefined when unknown. Each mount of an attachment's schedule has a tree of its own. */
  readonly meaning: ReadonlyMap<NameNode, Definition>;
}

/** The definitions of one kind, with the node type that belongs to it. */
export function definitionsOf<K extends NameKind>(model: Model, kind: K): readonly DefinitionOf<K>[] {
  return model.definitions.filter((definition): definition is DefinitionOf<K> => isDefinitionOf(definition, kind));
}

/** Whether a definition is of this kind. */
export function isDefinitionOf<K extends NameKind>(definition: Definition, kind: K): definition is DefinitionOf<K> {
  return definition.kind === kind;
}

/** A definition whose node is known to be of this kind. */
export type DefinitionOf<K extends NameKind> = Definition & { readonly kind: K; readonly node: Extract<NamingNode, { kind: K }> };

/** A declaration whose node is known to be of this kind. */
export type PlacedOf<K extends DeclarationNode['kind']> = PlacedDeclaration & { readonly node: Extract<DeclarationNode, { kind: K }> };

/** Placed declarations of one kind, in order. */
export function placed<K extends DeclarationNode['kind']>(model: Model, kind: K): readonly PlacedOf<K>[] {
  return model.declarations.filter((declaration): declaration is PlacedOf<K> => declaration.node.kind === kind);
}

/** The id of a name that is declared in this home. */
export function idIn(home: Home, name: string): string {
  return home.prefix === '' ? name : `${home.prefix}.${name}`;
}

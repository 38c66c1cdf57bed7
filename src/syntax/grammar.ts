/**
 * Grammar, last layer: files with their headers, and the order in which declarations may stand (any).
 */
import type { Token } from './token.js';
import { cover } from '../base/span.js';
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { MachineGrammar } from './grammar-machine.js';
import type { Missing } from './grammar-part.js';
import type { Series } from './series.js';
import type { DeclarationNode, FileNode, HeadClauseNode, HeaderNode, NameNode } from './tree.js';

/** A file without its comments, which the lexer kept aside; null without a usable header. */
export type ReadFile = Omit<FileNode, 'comments'> | null;

/** What came of reading a file. */
export interface Reading {
  readonly file: ReadFile;
  readonly diagnostics: readonly Diagnostic[];
  /** Indices of tokens that are not as the author wrote them. */
  readonly altered: ReadonlySet<number>;
  readonly missing: readonly Missing[];
}

/** What was read of earlier texts with the same words in them. Places are indices of tokens. */
export interface DeclarationMemory {
  /** The declaration that begins at `start`, if it is known; `altered` are tokens that are not as the author wrote them. */
  readonly recall: (start: number, altered: ReadonlySet<number>) => { readonly value: DeclarationNode; readonly end: number } | undefined;
  /** Offers a declaration that was read without a mistake. */
  readonly keep: (start: number, end: number, value: DeclarationNode, altered: ReadonlySet<number>) => void;
}

/** The grammar but for its parts. One instance reads any number of texts, one after the other. */
export class Grammar extends MachineGrammar {
  protected readonly position: () => DeclarationNode = this.without('access');
  protected readonly rest: () => DeclarationNode = this.without('access');
  protected readonly placeDeclaration: () => DeclarationNode = this.without('access');
  protected readonly walk: () => DeclarationNode = this.without('access');
  protected readonly step: () => DeclarationNode = this.without('access');
  protected readonly never: () => DeclarationNode = this.without('access');
  protected readonly gauge: () => DeclarationNode = this.without('findings');
  protected readonly dipstick: () => DeclarationNode = this.without('findings');
  protected readonly defect: () => DeclarationNode = this.without('findings');
  protected readonly example: () => DeclarationNode = this.without('examples');
  private unread: NameNode[] = [];
  private memory: DeclarationMemory | undefined;

  /** Reads one file's tokens. The same tokens must not be read again: what was misspelt has been put right in them. */
  read(tokens: Token[], source: string, file: number, mistakeLimit: number, memory?: DeclarationMemory): Reading {
    this.memory = memory;
    this.file = file;
    this.source = source;
    this.mistakeLimit = mistakeLimit;
    this.problems = [];
    this.pending = [];
    this.unread = [];
    this.missing = [];
    this.namesFollow = false;
    this.mistaken.clear();
    this.altered.clear();
    this.input = tokens;
    const read = this.whole();
    this.memory = undefined;
    return { file: read, diagnostics: this.problems, altered: this.altered, missing: this.missing };
  }

  /** File ::= Header Declaration* */
  readonly whole = this.RULE('whole', (): ReadFile => {
    const header = this.SUBRULE(this.headerPart);
    const declarations = this.SUBRULE(this.declarations);
    if (this.RECORDING_PHASE || header === null) return null;
    this.go(this.input.length);
    const at = declarations.reduce((span, each) => cover(span, each.at), header.at);
    return { kind: 'file', at, header, declarations, ...(this.unread.length === 0 ? {} : { unread: this.unread }) };
  });

  private readonly headerPart = this.RULE('headerPart', (): HeaderNode | null => {
    if (this.RECORDING_PHASE) return this.SUBRULE(this.header);
    const opens = () => this.sees(1, this.v.word.schedule, this.v.word.variant, this.v.word.part);
    const series = { opens, ends: () => !opens(), resumes: () => this.seesDeclaration(), read: () => this.SUBRULE(this.header) };
    const [header] = this.series({ ...series, ends: () => this.seesDeclaration() || this.place > 0 });
    if (header === undefined && this.problems.every((each) => each.code === syntaxCodes.strayWords.code)) this.noHeader();
    return header ?? null;
  });

  /** Header ::= ( "schedule" | "variant" | "part" ) Name Text HeadClause* */
  private readonly header = this.RULE('header', (): HeaderNode => {
    const [first, { lost }] = [this.LA(1), this];
    const role = this.OR<HeaderNode['role']>([
      { ALT: () => (this.CONSUME(this.v.word.schedule), 'schedule') },
      { ALT: () => (this.CONSUME(this.v.word.variant), 'variant') },
      { ALT: () => (this.CONSUME(this.v.word.part), 'part') },
    ]);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    const clauses = this.SUBRULE(this.headClauses);
    return { kind: 'header', at: this.since(first), role, name, title, clauses, ...this.partialSince(lost) };
  });

  private readonly headClauses = this.RULE('headClauses', (): readonly HeadClauseNode[] => {
    if (this.RECORDING_PHASE) this.MANY(() => this.SUBRULE(this.headClause));
    return this.series({
      opens: () => this.seesHeadClause(),
      ends: () => this.seesDeclaration(),
      resumes: () => this.seesHeadClause(),
      read: () => this.SUBRULE(this.headClause),
    });
  });

  private readonly headClause = this.RULE('headClause', (): HeadClauseNode => {
    const first = this.LA(1);
    return this.OR<HeadClauseNode>([
      {
        ALT: () => {
          this.CONSUME(this.v.word.language);
          const edition = this.integer(this.CONSUME(this.v.Number));
          return { kind: 'language', at: this.since(first), edition };
        },
      },
      {
        ALT: () => {
          this.CONSUME(this.v.word.edition);
          const number = this.integer(this.CONSUME(this.v.Number));
          this.CONSUME(this.v.word.of);
          const day = this.CONSUME(this.v.Date);
          this.CONSUME(this.v.word.by);
          const by = this.SUBRULE(this.text);
          return { kind: 'edition', at: this.since(first), number, date: this.dateNode(day), by };
        },
      },
      {
        ALT: () => {
          this.CONSUME(this.v.word.fits);
          this.CONSUME(this.v.word.model);
          const model = this.SUBRULE(this.text);
          const serial = this.OPTION(() => this.SUBRULE(this.serialRange));
          return { kind: 'fits', at: this.since(first), model, ...(serial === undefined ? {} : { serial }) };
        },
      },
      {
        ALT: () => (this.CONSUME(this.v.word.for), this.CONSUME(this.v.word.attachment), { kind: 'for-attachment', at: this.since(first) }),
      },
      {
        ALT: () => {
          this.CONSUME(this.v.word.varies);
          const path = this.SUBRULE(this.text);
          return { kind: 'varies', at: this.since(first), path };
        },
      },
      {
        ALT: () => {
          this.CONSUME(this.v.word.use);
          const path = this.SUBRULE(this.text);
          return { kind: 'use', at: this.since(first), path };
        },
      },
    ]);
  });

  private readonly declarations = this.RULE('declarations', (): readonly DeclarationNode[] => {
    if (this.RECORDING_PHASE) this.MANY(() => this.SUBRULE(this.declaration));
    return this.series({
      opens: () => this.seesDeclaration(),
      ends: () => false,
      resumes: () => this.seesWholeDeclaration(),
      read: () => {
        // A declaration that went wrong may have left it set.
        this.namesFollow = false;
        return this.SUBRULE(this.declaration);
      },
      ...this.remembering(),
    });
  });

  private readonly declaration = this.RULE('declaration', (): DeclarationNode =>
    this.OR<DeclarationNode>({
      DEF: (this.declarationChoices ??= [
        { ALT: () => this.SUBRULE(this.meter) },
        { ALT: () => this.SUBRULE(this.gauge) },
        { ALT: () => this.SUBRULE(this.dipstick) },
        { ALT: () => this.SUBRULE(this.duty) },
        { ALT: () => this.SUBRULE(this.attachment) },
        { ALT: () => this.SUBRULE(this.position) },
        { ALT: () => this.SUBRULE(this.rest) },
        { ALT: () => this.SUBRULE(this.placeDeclaration) },
        { ALT: () => this.SUBRULE(this.walk) },
        { ALT: () => this.SUBRULE(this.step) },
        { ALT: () => this.SUBRULE(this.never) },
        { ALT: () => this.SUBRULE(this.stop) },
        { ALT: () => this.SUBRULE(this.supply) },
        { ALT: () => this.SUBRULE(this.hazard) },
        { ALT: () => this.SUBRULE(this.event) },
        { ALT: () => this.SUBRULE(this.defect) },
        { ALT: () => this.SUBRULE(this.task) },
        { ALT: () => this.SUBRULE(this.change) },
        { ALT: () => this.SUBRULE(this.remove) },
        { ALT: () => this.SUBRULE(this.example) },
      ]),
    }),
  );

  private remembering(): Pick<Series<DeclarationNode>, 'recalls' | 'keeps'> {
    const { memory } = this;
    if (memory === undefined) return {};
    const { altered } = this;
    return {
      recalls: (start) => memory.recall(start, altered),
      keeps: (start, end, value) => memory.keep(start, end, value, altered),
    };
  }

  declare private declarationChoices: { readonly ALT: () => DeclarationNode }[] | undefined;

  protected override gaveUp(start: number): void {
    const [opener, name] = [this.tokenAt(start), this.tokenAt(start + 1)];
    if (opener === undefined || name === undefined || !this.v.opensDeclaration.has(opener.tokenType)) return;
    if (name.tokenType === this.v.Name) this.unread.push(this.nameNode(name));
  }

  private noHeader(): void {
    const first = this.tokenAt(0);
    const at = first === undefined ? { file: this.file, start: 0, end: 0 } : this.spanOf(first);
    this.problems = [
      diagnose(syntaxCodes.headerMissing, {
        message: 'The file does not say what it is.',
        at,
        help: 'Begin with `schedule`, a name and a title, for example `schedule orchard-tractor "Orchard tractor"`.',
      }),
    ];
  }

  private seesHeadClause(): boolean {
    const { attachment, edition, fits, language, use, varies } = this.v.word;
    return this.sees(1, language, edition, fits, varies, use) || (this.sees(1, this.v.word.for) && this.sees(2, attachment));
  }

  /** After a mistake: a declaration's word that is not in the middle of something else. */
  private seesWholeDeclaration(): boolean {
    const { attachment, change, example, never, remove, task } = this.v.word;
    if (!this.seesDeclaration()) return false;
    const named = this.seesA(2, this.v.Name) || this.sees(3, this.v.Text);
    if (this.sees(1, task)) return !this.sees(0, change, remove) && named;
    if (this.sees(1, attachment)) return !this.sees(0, this.v.word.for) && named;
    if (this.sees(1, change, remove)) return this.sees(2, task);
    return this.sees(1, never, example) ? this.sees(2, this.v.Text) : named;
  }
}

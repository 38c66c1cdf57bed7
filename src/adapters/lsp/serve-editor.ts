/**
 * The language server: speaks the Language Server Protocol 3.17 over two streams until the editor says goodbye.
 */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { CodeActionKind, ErrorCodes, ResponseError, TextDocuments, TextDocumentSyncKind } from 'vscode-languageserver';
import type { Connection, InitializeParams, ServerCapabilities } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Moment } from '../../values/moment.js';
import { actions, colours, completions, definition, folds, formatting, hoverAt, lenses, references, renamable, renaming, symbols, type Place } from './answers.js'; // prettier-ignore
import { Desk, type Schedule } from './desk.js';
import { pathOf, uriOf } from './file-uri.js';
import { Publisher } from './publisher.js';
import { tokenModifiers, tokenTypes } from './to-lsp.js';

/** What the server knows of the world. */
export interface EditorHost {
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream;
  readonly now: () => Moment;
}

/** Milliseconds without a keystroke after which schedules are compiled and their examples run. */
const PAUSE = 250;

const capabilities: ServerCapabilities = {
  positionEncoding: 'utf-16',
  textDocumentSync: TextDocumentSyncKind.Incremental,
  completionProvider: { triggerCharacters: [' ', '.'] },
  hoverProvider: true,
  definitionProvider: true,
  referencesProvider: true,
  renameProvider: { prepareProvider: true },
  documentSymbolProvider: true,
  foldingRangeProvider: true,
  documentFormattingProvider: true,
  codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.SourceFixAll] },
  codeLensProvider: {},
  semanticTokensProvider: { legend: { tokenTypes: [...tokenTypes], tokenModifiers: [...tokenModifiers] }, full: true },
};

/** Serves one editor; resolves when it has gone. */
export function serveEditor(host: EditorHost): Promise<void> {
  const connection = createConnection(ProposedFeatures.all, host.input, host.output);
  const documents = new TextDocuments(TextDocument);
  let folders: readonly string[] = [];
  const desk = new Desk(() => folders);
  const client = { refreshesLenses: false };
  connection.onInitialize((params) => {
    folders = foldersOf(params);
    client.refreshesLenses = params.capabilities.workspace?.codeLens?.refreshSupport === true;
    return { capabilities, serverInfo: { name: 'duewright' } };
  });
  follow(connection, documents, desk, client);
  answer(connection, desk, host.now);
  documents.listen(connection);
  connection.listen();
  return new Promise((resolve) => {
    connection.onExit(() => resolve());
    host.input.on('end', () => resolve());
  });
}

function foldersOf({ workspaceFolders }: InitializeParams): readonly string[] {
  return (workspaceFolders ?? []).map(({ uri }) => pathOf(uri));
}

/** Diagnostics at each keystroke: several that came in at once are answered once. What takes longer waits for a pause. */
function follow(
  connection: Connection,
  documents: TextDocuments<TextDocument>,
  desk: Desk,
  client: { readonly refreshesLenses: boolean },
): void {
  const publisher = new Publisher(desk, (params) => void connection.sendDiagnostics(params));
  let soon: NodeJS.Immediate | undefined;
  let pause: NodeJS.Timeout | undefined;
  const settle = (): void => {
    for (const { path } of desk.schedules()) desk.settle(path);
    publisher.publish();
    if (client.refreshesLenses) void connection.sendRequest('workspace/codeLens/refresh');
  };
  const stir = (): void => {
    soon ??= setImmediate(() => {
      soon = undefined;
      publisher.publish();
    });
    clearTimeout(pause);
    pause = setTimeout(settle, PAUSE);
  };
  documents.onDidChangeContent(({ document }) => {
    desk.put(pathOf(document.uri), document.getText());
    stir();
  });
  documents.onDidClose(({ document }) => {
    desk.close(pathOf(document.uri));
    stir();
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) desk.forget(pathOf(uri));
    stir();
  });
  connection.onShutdown(() => clearTimeout(pause));
}

function answer(connection: Connection, desk: Desk, now: () => Moment): void {
  const at = <T>(uri: string, ask: (place: Place) => T, otherwise: T): T => {
    const place = placeOf(desk, uri);
    return place === undefined ? otherwise : ask(place);
  };
  connection.onCompletion(({ textDocument: { uri }, position }) => at(uri, (place) => [...completions(place, position)], []));
  connection.onHover(({ textDocument: { uri }, position }) => at(uri, (place) => hoverAt(place, position, now()), null));
  connection.onDefinition(({ textDocument: { uri }, position }) => at(uri, (place) => definition(place, position), null));
  connection.onReferences(({ textDocument: { uri }, position, context }) =>
    references(placesOf(desk, uri), position, context.includeDeclaration).slice(),
  );
  connection.onPrepareRename(({ textDocument: { uri }, position }) => at(uri, (place) => renamable(place, position), null));
  connection.onRenameRequest(({ textDocument: { uri }, position, newName }) => {
    const edit = renaming(placesOf(desk, uri), position, newName);
    return 'refused' in edit ? new ResponseError(ErrorCodes.InvalidRequest, edit.refused) : edit;
  });
  connection.onDocumentSymbol(({ textDocument: { uri } }) => at(uri, (place) => [...symbols(place)], []));
  connection.onFoldingRanges(({ textDocument: { uri } }) => at(uri, (place) => [...folds(place)], []));
  connection.onDocumentFormatting(({ textDocument: { uri } }) => at(uri, (place) => [...formatting(place)], []));
  connection.onCodeAction(({ textDocument: { uri }, range }) => at(uri, (place) => [...actions(place, range)], []));
  connection.onCodeLens(({ textDocument: { uri } }) => at(uri, (place) => [...lenses(place)], []));
  connection.languages.semanticTokens.on(({ textDocument: { uri } }) => at(uri, (place) => colours(place), { data: [] }));
}

/** A file within the schedule that it belongs to; undefined for one that cannot be read. */
function placeOf(desk: Desk, uri: string): Place | undefined {
  const path = pathOf(uri);
  return placeIn(desk, desk.scheduleOf(path), path);
}

/** A file within every schedule that it can be found in. */
function placesOf(desk: Desk, uri: string): readonly Place[] {
  const path = pathOf(uri);
  return desk.schedulesWith(path).flatMap((schedule) => placeIn(desk, schedule, path) ?? []);
}

function placeIn(desk: Desk, schedule: Schedule, path: string): Place | undefined {
  const file = desk.fileOf(schedule, path);
  const source = file === undefined ? undefined : schedule.checked.sources[file];
  if (file === undefined || source === undefined) return undefined;
  return { desk, schedule, view: { checked: schedule.checked, file }, source, uriOf: uriWithin(desk, schedule) };
}

function uriWithin(desk: Desk, schedule: Schedule): (file: number) => string {
  return (file) => uriOf(desk.pathOf(schedule, file));
}

import { spawn, type ChildProcess } from 'node:child_process';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type ProtocolConnection,
} from 'vscode-languageserver-protocol/node';
import { InitializeRequest, type PublishDiagnosticsParams, type ServerCapabilities } from 'vscode-languageserver-protocol';
import { pathToFileURL } from 'node:url';

/** An editor that has started the server as any editor would, and speaks the real protocol to it. */
export interface EditorClient {
  readonly connection: ProtocolConnection;
  readonly capabilities: ServerCapabilities;
  readonly open: (path: string, text: string) => void;
  /** Puts a text in the place of a stretch, as a keystroke does. */
  readonly type: (path: string, version: number, range: readonly [line: number, from: number, to: number], text: string) => void;
  /** The diagnostics of a file once they are as wanted; the last ones when that does not come about. */
  readonly diagnostics: (
    path: string,
    wanted: (found: PublishDiagnosticsParams) => boolean,
  ) => Promise<PublishDiagnosticsParams | undefined>;
  /** Says goodbye as the protocol wants it, and gives the exit code of the process. */
  readonly leave: () => Promise<number | null>;
}

export function uri(path: string): string {
  return pathToFileURL(path).href;
}

/** Starts `duewright serve-editor` on a folder. */
export async function startEditor(script: string, folder: string, args: readonly string[]): Promise<EditorClient> {
  const child = spawn(process.execPath, [script, 'serve-editor', ...args], { stdio: ['pipe', 'pipe', 'inherit'] });
  const connection = createProtocolConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  const told = new Map<string, PublishDiagnosticsParams>();
  const waiting = new Set<() => void>();
  connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
    told.set(params.uri, params);
    for (const look of waiting) look();
  });
  connection.listen();
  const { capabilities } = await connection.sendRequest(InitializeRequest.type, {
    processId: process.pid,
    // eslint-disable-next-line @typescript-eslint/no-deprecated -- its type still wants it
    rootUri: null,
    workspaceFolders: [{ uri: uri(folder), name: 'schedules' }],
    capabilities: {},
  });
  void connection.sendNotification('initialized', {});
  return {
    connection,
    capabilities,
    open: (path, text) =>
      void connection.sendNotification('textDocument/didOpen', {
        textDocument: { uri: uri(path), languageId: 'duewright', version: 1, text },
      }),
    type: (path, version, [line, from, to], text) =>
      void connection.sendNotification('textDocument/didChange', {
        textDocument: { uri: uri(path), version },
        contentChanges: [{ range: { start: { line, character: from }, end: { line, character: to } }, text }],
      }),
    diagnostics: (path, wanted) =>
      new Promise((resolve) => {
        const give = (): void => {
          waiting.delete(look);
          clearTimeout(limit);
          resolve(told.get(uri(path)));
        };
        const look = (): void => {
          const found = told.get(uri(path));
          if (found !== undefined && wanted(found)) give();
        };
        const limit = setTimeout(give, 15_000);
        waiting.add(look);
        look();
      }),
    leave: async () => {
      await connection.sendRequest('shutdown');
      const gone = exitOf(child);
      void connection.sendNotification('exit');
      return gone;
    },
  };
}

function exitOf(child: ChildProcess): Promise<number | null> {
  return new Promise((resolve) => child.once('exit', (code) => resolve(code)));
}

// A conversation with the program as a typed client of the protocol has it.
// BENCHCARD is the program, NODE_PACKAGES the folder with node_modules.
import { spawn } from 'node:child_process';
import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import { mkdtempSync, writeFileSync, mkdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';

const require = createRequire(join(process.env.NODE_PACKAGES, 'package.json'));
export const rpc = require('vscode-jsonrpc/node');
export const lsp = require('vscode-languageserver-protocol');
export const { TextDocument } = require('vscode-languageserver-textdocument');

const longest_wait = 30000;

export const everything = {
  general: { positionEncodings: ['utf-16'] },
  workspace: { workspaceEdit: { documentChanges: true } },
  textDocument: {
    publishDiagnostics: { relatedInformation: true, versionSupport: true },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } },
  },
};

export class Session {
  constructor(options = []) {
    this.child = spawn(process.env.BENCHCARD, ['language-server', ...options],
      { stdio: ['pipe', 'pipe', 'inherit'] });
    this.exited = new Promise((done) => this.child.on('exit', done));
    this.connection = rpc.createMessageConnection(
      new rpc.StreamMessageReader(this.child.stdout), new rpc.StreamMessageWriter(this.child.stdin));
    this.connection.onUnhandledNotification((n) => assert.fail(`unexpected ${n.method}`));
    this.published = new Map();
    this.waiting = [];
    this.connection.onNotification(lsp.PublishDiagnosticsNotification.type, (d) => {
      this.published.set(d.uri, d);
      this.waiting = this.waiting.filter((w) => !w());
    });
    this.connection.listen();
  }

  request(type, ...rest) { return this.connection.sendRequest(type, ...rest); }
  notify(type, params) { return this.connection.sendNotification(type, params); }

  async initialize(capabilities = everything, folder = null) {
    const result = await this.request(lsp.InitializeRequest.type, {
      processId: process.pid, rootUri: folder, capabilities,
      workspaceFolders: folder ? [{ uri: folder, name: 'recipes' }] : null });
    await this.notify(lsp.InitializedNotification.type, {});
    return result;
  }

  open(uri, text, version = 1) {
    return this.notify(lsp.DidOpenTextDocumentNotification.type,
      { textDocument: { uri, languageId: 'recipe', version, text } });
  }

  change(uri, version, contentChanges) {
    return this.notify(lsp.DidChangeTextDocumentNotification.type,
      { textDocument: { uri, version }, contentChanges });
  }

  /// Waits for what is said of a version of a document.
  async said(uri, version) {
    const is_there = () => this.published.get(uri)?.version === version;
    if (!is_there())
      await new Promise((done, fail) => {
        const timer = setTimeout(
          () => fail(new Error(`nothing was said of version ${version} of ${uri}`)), longest_wait);
        this.waiting.push(() => is_there() && (clearTimeout(timer), done(), true));
      });
    return this.published.get(uri).diagnostics;
  }

  async end() {
    await this.request(lsp.ShutdownRequest.type);
    await this.notify(lsp.ExitNotification.type);
    assert.equal(await this.exited, 0);
    this.connection.dispose();
  }
}

/// A folder of files, gone with the process.
export function folder(files) {
  const path = mkdtempSync(join(tmpdir(), 'benchcard-editor.'));
  process.on('exit', () => rmSync(path, { recursive: true, force: true }));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(path, name)), { recursive: true });
    writeFileSync(join(path, name), text);
  }
  const uri = (name) => pathToFileURL(join(path, name)).href;
  return { path, uri, root: pathToFileURL(path).href };
}

/// The place of the first character of `words` in a text, so many characters on.
export function place(text, words, on = 0) {
  const at = text.indexOf(words);
  assert.notEqual(at, -1, `${words} stands in the text`);
  return TextDocument.create('x:', '', 0, text).positionAt(at + on);
}

export function applied(text, edits) {
  return TextDocument.applyEdits(TextDocument.create('x:', '', 0, text), edits);
}

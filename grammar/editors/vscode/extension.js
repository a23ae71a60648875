// Starts benchcard's language server for recipes.
const vscode = require('vscode');
const { LanguageClient } = require('vscode-languageclient/node');
const { find_program } = require('./find_program');

let client;

async function activate(context) {
  const folders = vscode.workspace.isTrusted
    ? (vscode.workspace.workspaceFolders ?? []).map((f) => f.uri.fsPath)
    : [];
  const command = find_program(vscode.workspace.getConfiguration('benchcard').get('path'), folders);
  if (!command) {
    vscode.window.showWarningMessage(
      'benchcard was not found. Install it, put it on the PATH, or set benchcard.path.');
    return;
  }
  client = new LanguageClient('benchcard', 'benchcard', { command, args: ['language-server'] },
    { documentSelector: [{ language: 'recipe' }],
      synchronize: { fileEvents: vscode.workspace.createFileSystemWatcher('**/*.recipe') } });
  context.subscriptions.push(
    vscode.commands.registerCommand('benchcard.printCards', print_cards));
  await client.start();
}

async function print_cards() {
  const editor = vscode.window.activeTextEditor;
  if (!client || editor?.document.languageId !== 'recipe') return;
  try {
    const path = await client.sendRequest('workspace/executeCommand',
      { command: 'benchcard.print', arguments: [editor.document.uri.toString()] });
    await vscode.env.openExternal(vscode.Uri.file(path));
  } catch (why) {
    vscode.window.showErrorMessage(`The cards were not printed: ${why.message}`);
  }
}

exports.activate = activate;
exports.deactivate = () => client?.stop();

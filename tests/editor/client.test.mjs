// The whole of what the server does, by the protocol's own typed client.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { Session, applied, everything, folder, lsp, place, rpc } from './session.mjs';

const pastry = `recipe: House pastry
measures: us

component: Sweet pastry
makes: 2 cases of 265 g
250 g   plain flour
150 g   unsalted butter
130 g   caster sugar
- Rub [butter] into [flour] and [sugar]; chill for [1 h].

ingredient: praline grains
also: crushed praline
weighs: 8 g per tbsp
contains: hazelnuts
source: weighed here
`;
const tart = `recipe: 𝕏 tart é
makes: 2 tarts
measures: us
use: house/pastry.recipe

component: Cream
makes: 400 g
2   cups     double cream
1   tsp      vanilla extract
- Whip [cream] with [vanilla extract].

assembly: Tarts
per: 1 tart
1   case     Sweet pastry
200 g        Cream
1   tbsp     crushed praline
- Fill [Sweet pastry] with [Cream: half]; add [Cream: rest].
- Scatter [praline]. Bake at [180 C] for [20 min].
`;

async function started(t, files = { 'house/pastry.recipe': pastry, 'tart.recipe': tart }) {
  const at = folder(files);
  const s = new Session();
  t.after(() => s.child.kill());
  await s.initialize(everything, at.root);
  const uri = at.uri('tart.recipe');
  await s.open(uri, files['tart.recipe']);
  return { s, at, uri, doc: { textDocument: { uri } } };
}

test('initialize says what the server can do, in the encoding that was offered', async () => {
  for (const [offered, chosen] of [[undefined, 'utf-16'], [['utf-16'], 'utf-16'],
                                   [['utf-8', 'utf-32', 'utf-16'], 'utf-8']]) {
    const s = new Session(['--stdio']);
    const { capabilities, serverInfo } = await s.initialize(
      offered ? { general: { positionEncodings: offered } } : {});
    assert.equal(capabilities.positionEncoding, chosen);
    assert.equal(capabilities.textDocumentSync.change, lsp.TextDocumentSyncKind.Incremental);
    assert.equal(serverInfo.name, 'benchcard');
    const uri = 'untitled:Untitled-1';
    await s.open(uri, 'recipe: A\n100 g plain flour   # 𝕏é\n𝕏 what\n- Mix the [flour].\n');
    const [d] = await s.said(uri, 1);
    assert.deepEqual(d.range, { start: { line: 2, character: 0 },
                                end: { line: 2, character: chosen === 'utf-8' ? 9 : 7 } });
    await s.end();
  }
});

test('messages come with code, other places and repairs', async (t) => {
  const text = 'recipe: A\nrevison: 3\n5-3 g plain flour\ncomponent: B\n1 g x\ncomponent: B\n1 g y\n';
  const { s, uri } = await started(t, { 'tart.recipe': text });
  const said = await s.said(uri, 1);
  const spelt = said.find((d) => d.code === 'unknown-setting');
  assert.equal(spelt.severity, lsp.DiagnosticSeverity.Error);
  assert.equal(spelt.source, 'benchcard');
  assert.match(spelt.message, /^there is no setting `revison`\nhelp: the nearest setting is `revision:`$/);
  assert.deepEqual(spelt.range, { start: { line: 1, character: 0 }, end: { line: 1, character: 7 } });
  const twice = said.find((d) => d.code === 'duplicate-component');
  assert.deepEqual(twice.relatedInformation.map((r) => [r.location.uri, r.location.range.start.line]),
                   [[uri, 3]]);
  const actions = await s.request(lsp.CodeActionRequest.type, {
    textDocument: { uri }, range: spelt.range, context: { diagnostics: [spelt] } });
  assert.equal(actions.length, 1);
  assert.equal(actions[0].kind, 'quickfix');
  assert.equal(actions[0].isPreferred, true);
  assert.deepEqual(actions[0].diagnostics, [spelt]);
  const [change] = actions[0].edit.documentChanges;
  assert.equal(change.textDocument.version, 1);
  assert.equal(applied(text, change.edits), text.replace('revison', 'revision'));
  const none = await s.request(lsp.CodeActionRequest.type, {
    textDocument: { uri }, range: spelt.range, context: { diagnostics: [], only: ['source'] } });
  assert.deepEqual(none, []);
  await s.end();
});

test('what is said of a used file goes to that file, and ends when it is mended or closed', async (t) => {
  const { s, at, uri } = await started(t);
  await s.said(uri, 1);
  const house = at.uri('house/pastry.recipe');
  assert.equal(s.published.get(house), undefined);
  // Unsaved: the file on the disk stays as it is.
  await s.open(house, pastry.replace('Sweet pastry', 'Sour pastry'), 7);
  await s.said(house, 7);
  await s.change(uri, 2, [{ text: tart }]);
  assert.deepEqual((await s.said(uri, 2)).map((d) => d.code).filter((c) => c.startsWith('unknown')),
                   ['unknown-ingredient']);
  await s.change(house, 8, [{ text: pastry }]);
  await s.said(house, 8);
  await s.change(uri, 3, [{ text: tart }]);
  assert.deepEqual((await s.said(uri, 3)).filter((d) => d.severity === 1), []);
  await s.change(house, 9, [{ text: pastry + '0 g x\n' }]);
  await s.said(house, 9);
  await s.notify(lsp.DidCloseTextDocumentNotification.type, { textDocument: { uri: house } });
  await s.change(uri, 4, [{ text: tart }]);
  await s.said(uri, 4);
  assert.deepEqual(s.published.get(house).diagnostics, []);
  writeFileSync(`${at.path}/house/pastry.recipe`, pastry + '0 g x\n');
  await s.notify(lsp.DidSaveTextDocumentNotification.type, { textDocument: { uri } });
  await s.change(uri, 5, [{ text: tart }]);
  await s.said(uri, 5);
  assert.deepEqual(s.published.get(house).diagnostics.map((d) => d.code), ['misplaced-line']);
  await s.notify(lsp.DidCloseTextDocumentNotification.type, { textDocument: { uri } });
  await s.request(lsp.ShutdownRequest.type);
  assert.deepEqual(s.published.get(house).diagnostics, []);
  assert.deepEqual(s.published.get(uri).diagnostics, []);
});

test('hover says what a line weighs, what a component makes and what a setting is', async (t) => {
  const { s, doc } = await started(t);
  const hover = async (words, on) => (await s.request(lsp.HoverRequest.type,
    { ...doc, position: place(tart, words, on) }))?.contents.value;
  const cream = await hover('double cream');
  assert.match(cream, /^\*\*double cream\*\*\n\n476 g, 1 lb ¾ oz; source: USDA/);
  assert.match(cream, /Contains milk\./);
  assert.equal(await hover('[cream]', 2), cream);
  const praline = await hover('crushed praline');
  assert.match(praline, /8 g/);
  assert.match(praline, /source: weighed here/);
  assert.match(praline, /Contains hazelnuts\./);
  const pastry_said = await hover('Sweet pastry');
  assert.match(pastry_said, /\(component\)\n\n265 g/);
  assert.match(pastry_said, /- goes in: 530 g\n- makes: 2 cases of 265 g, 530 g\n- used: 2 cases in Tarts$/);
  assert.match(await hover('component: Cream', 12), /\*\*Cream\*\* \(component\)/);
  assert.match(await hover('per:'), /^\*\*per:\*\* The amounts of this block.*\n\nFor example `per: 1 tart`$/);
  assert.match(await hover('assembly:'), /^\*\*assembly:\*\* /);
  assert.equal(await hover('Bake at'), undefined);
  const flour = 'recipe: A\nmeasures: us\n1 cup sifted plain flour\n';
  await s.change(doc.textDocument.uri, 2, [{ text: flour }]);
  const spread = await s.request(lsp.HoverRequest.type, { ...doc, position: place(flour, '1 cup') });
  assert.match(spread.contents.value, /^\*\*sifted plain flour\*\*\n\n113 g, 4 oz; source: GNU units.*\n\nContains wheat\./s);
  await s.change(doc.textDocument.uri, 3, [{ text: flour.replace('sifted ', '') }]);
  const level = await s.request(lsp.HoverRequest.type, { ...doc, position: place(flour, '1 cup', 8) });
  assert.match(level.contents.value, /\n\n125 g \(113 g to 142 g by how the cup is filled\), 4½ oz/);
  await s.end();
});

test('completion knows settings, values, measures, names with their grams, and brackets', async (t) => {
  const { s, uri, doc } = await started(t);
  let version = 1;
  const offered = async (line, at = 'component: Cream\n') => {
    const text = tart.replace(at, at + line + '\n');
    await s.change(uri, ++version, [{ text }]);
    const position = place(text, at + line, (at + line).length);
    const { items } = await s.request(lsp.CompletionRequest.type, { ...doc, position });
    return Object.fromEntries(items.map((i) => [i.label, i]));
  };
  const settings = await offered('ke');
  assert.deepEqual(Object.keys(settings), ['keeps:']);
  assert.equal(settings['keeps:'].textEdit.newText, 'keeps: ');
  assert.match(settings['keeps:'].documentation.value, /How long it keeps/);
  assert.ok(!('revision:' in await offered('')));
  assert.ok('revision:' in await offered('', 'measures: us\n'));
  assert.deepEqual(Object.keys(await offered('measures: us-', 'recipe: 𝕏 tart é\n')), ['us-label']);
  assert.ok('cups' in await offered('2 cu'));
  const names = await offered('2 cups plain fl');
  assert.match(names['plain flour'].detail, /^250 g \(227 g to 283 g\)$/);
  assert.deepEqual(names['plain flour'].textEdit.range.start.character, 7);
  assert.match((await offered('1 tbsp crushed p'))['crushed praline'].detail, /^8 g$/);
  assert.ok('Sweet pastry' in await offered('1 case Sw'));
  assert.deepEqual(Object.keys(await offered('- Whip [', '1   tsp      vanilla extract\n')),
                   ['cream', 'double cream', 'extract', 'vanilla extract', 'rest', 'overnight']);
  assert.deepEqual(Object.keys(await offered('- Whip [cream: ', '1   tsp      vanilla extract\n')),
                   ['half', 'rest', '1/3', '1/4']);
  assert.ok('house/pastry.recipe' in await offered('use: hou', 'measures: us\n'));
  assert.deepEqual(Object.keys(await offered('# plain fl')), []);
  assert.deepEqual(Object.keys(await offered('2 cups plain flour, sif')), []);
  await s.end();
});

test('the outline, folds and tokens follow the text', async (t) => {
  const { s, doc } = await started(t);
  const symbols = await s.request(lsp.DocumentSymbolRequest.type, doc);
  assert.deepEqual(symbols.map((x) => x.name), ['𝕏 tart é', 'Cream', 'Tarts']);
  assert.deepEqual(symbols[1].children.map((x) => [x.name, x.detail]),
                   [['double cream', '2   cups'], ['vanilla extract', '1   tsp']]);
  assert.equal(symbols[1].range.start.line, 5);
  assert.equal(symbols[1].range.end.line, 9);
  const folds = await s.request(lsp.FoldingRangeRequest.type, doc);
  assert.deepEqual(folds.map((f) => [f.startLine, f.endLine]), [[0, 3], [5, 9], [11, 17]]);
  const { data } = await s.request(lsp.SemanticTokensRequest.type, doc);
  const kinds = ['keyword', 'class', 'type', 'variable', 'number', 'macro', 'string', 'comment'];
  const lines = tart.split('\n');
  const found = [];
  for (let i = 0, line = 0, at = 0; i < data.length; i += 5) {
    at = data[i] ? data[i + 1] : at + data[i + 1];
    line += data[i];
    found.push(`${kinds[data[i + 3]]} ${lines[line].slice(at, at + data[i + 2])}`);
  }
  for (const token of ['keyword recipe', 'class 𝕏 tart é', 'string 2 tarts', 'number 2', 'macro cups',
                       'variable double cream', 'type Sweet pastry', 'type Cream', 'number half',
                       'number 180 C', 'variable praline'])
    assert.ok(found.includes(token), `${token} in ${found}`);
  await s.end();
});

test('definition, references and rename go across use:', async (t) => {
  const { s, at, uri, doc } = await started(t);
  const house = at.uri('house/pastry.recipe');
  const define = (words, on = 0) => s.request(lsp.DefinitionRequest.type,
    { ...doc, position: place(tart, words, on) });
  assert.deepEqual(await define('Sweet pastry', 3),
    { uri: house, range: { start: place(pastry, 'Sweet pastry'), end: place(pastry, 'Sweet pastry', 12) } });
  assert.deepEqual((await define('[praline]', 1)).range.start, place(pastry, 'praline grains'));
  assert.equal((await define('house/pastry', 1)).uri, house);
  assert.equal(await define('double cream'), null);
  const where = { textDocument: { uri: house }, position: place(pastry, 'Sweet pastry') };
  await s.open(house, pastry);
  const users = await s.request(lsp.ReferencesRequest.type, { ...where, context: { includeDeclaration: false } });
  assert.deepEqual(users.map((r) => [r.uri, r.range.start.line]), [[uri, 13], [uri, 16]]);
  const prepared = await s.request(lsp.PrepareRenameRequest.type, where);
  assert.equal(prepared.placeholder, 'Sweet pastry');
  const { documentChanges } = await s.request(lsp.RenameRequest.type, { ...where, newName: 'Short crust' });
  const changed = Object.fromEntries(documentChanges.map((c) => [c.textDocument.uri, c.edits]));
  assert.equal(applied(pastry, changed[house]), pastry.replace('Sweet pastry', 'Short crust'));
  assert.equal(applied(tart, changed[uri]), tart.replaceAll('Sweet pastry', 'Short crust'));
  const flour = await s.request(lsp.RenameRequest.type,
    { textDocument: { uri: house }, position: place(pastry, 'plain flour'), newName: 'rye flour' });
  assert.equal(applied(pastry, flour.documentChanges[0].edits),
               pastry.replace('plain flour', 'rye flour').replace('[flour]', '[rye flour]'));
  await assert.rejects(s.request(lsp.RenameRequest.type, { ...where, newName: 'a, b' }),
                       /cannot have `,` in it/);
  await assert.rejects(s.request(lsp.RenameRequest.type,
    { ...doc, position: place(tart, 'makes'), newName: 'x' }), /no component or ingredient here/);
  await s.end();
});

test('a recipe that is not open is found in the folder, and renamed with the rest', async (t) => {
  const at = folder({ 'house/pastry.recipe': pastry, 'tart.recipe': tart });
  const s = new Session();
  t.after(() => s.child.kill());
  await s.initialize({}, at.root);
  const house = at.uri('house/pastry.recipe');
  await s.open(house, pastry);
  const { changes } = await s.request(lsp.RenameRequest.type, {
    textDocument: { uri: house }, position: place(pastry, 'praline grains', 2), newName: 'brittle' });
  assert.deepEqual(Object.keys(changes), [house]);
  const crust = (await s.request(lsp.RenameRequest.type, {
    textDocument: { uri: house }, position: place(pastry, 'Sweet pastry', 2), newName: 'Crust' })).changes;
  assert.equal(applied(tart, crust[at.uri('tart.recipe')]), tart.replaceAll('Sweet pastry', 'Crust'));
  await s.end();
});

test('formatting is what tidy prints, in small edits, and none when it is in order', async (t) => {
  const untidy = 'recipe: 𝕏  é\r\n1 cup  plain flour ,sifted\r\n200 g   butter\r\n- Mix.  \r\nmeasures: us';
  const { s, uri, doc } = await started(t, { 'tart.recipe': untidy });
  const options = { tabSize: 2, insertSpaces: true };
  const edits = await s.request(lsp.DocumentFormattingRequest.type, { ...doc, options });
  const tidy = 'recipe: 𝕏 é\r\n1   cup   plain flour, sifted\r\n200 g     butter\r\n- Mix.\r\nmeasures: us\r\n';
  assert.equal(applied(untidy, edits), tidy);
  assert.equal(edits.length, 5);
  await s.change(uri, 2, [{ text: tidy }]);
  assert.deepEqual(await s.request(lsp.DocumentFormattingRequest.type, { ...doc, options }), []);
  await s.end();
});

test('grams stand beside volumes, and can be written there', async (t) => {
  const { s, doc } = await started(t);
  const all = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
  const hints = await s.request(lsp.InlayHintRequest.type, { ...doc, range: all });
  assert.deepEqual(hints.map((h) => [h.position.line, h.position.character]), [[7, 8], [8, 7], [15, 8]]);
  assert.match(hints[0].label, /^= \d+ g$/);
  const line = { start: { line: 7, character: 1 }, end: { line: 7, character: 1 } };
  assert.equal((await s.request(lsp.InlayHintRequest.type, { ...doc, range: { start: { line: 8, character: 0 }, end: { line: 8, character: 50 } } })).length, 1);
  const actions = await s.request(lsp.CodeActionRequest.type,
    { ...doc, range: line, context: { diagnostics: [], only: ['refactor'] } });
  assert.deepEqual(actions.map((a) => a.title), ['Write the weight beside this volume',
                                                 'Write the weight beside every volume in this recipe']);
  const one = applied(tart, actions[0].edit.documentChanges[0].edits);
  assert.equal(one, tart.replace('2   cups', `2   cups ${hints[0].label}`));
  const whole = applied(tart, actions[1].edit.documentChanges[0].edits);
  for (const h of hints) assert.ok(whole.includes(` ${h.label}`));
  await s.end();
});

test('the cards are printed from the text as it stands, and their path comes back', async (t) => {
  process.env.XDG_CACHE_HOME = folder({}).path;
  const { s, uri } = await started(t, { 'house/pastry.recipe': pastry, 'tart.recipe': tart.replace('𝕏', 'A') });
  delete process.env.XDG_CACHE_HOME;
  const print = { command: 'benchcard.print', arguments: [uri] };
  const path = await s.request(lsp.ExecuteCommandRequest.type, print);
  assert.match(path, /\/benchcard\/tart\.pdf$/);
  assert.equal(readFileSync(path).subarray(0, 5).toString(), '%PDF-');
  await s.change(uri, 2, [{ text: 'recipe: A\n0 g flour\n' }]);
  await assert.rejects(s.request(lsp.ExecuteCommandRequest.type, print), /the recipe has errors/);
  assert.ok(existsSync(path));
  await s.end();
});

test('requests are refused by the protocol, and none ends the server', async () => {
  const s = new Session();
  await assert.rejects(s.request('textDocument/hover', {}), (e) => e.code === -32002);
  await s.initialize();
  await assert.rejects(s.request('no/such', {}), (e) => e.code === rpc.ErrorCodes.MethodNotFound);
  await assert.rejects(s.request('textDocument/hover', {}), (e) => e.code === rpc.ErrorCodes.InvalidParams);
  await assert.rejects(s.request('textDocument/hover',
    { textDocument: { uri: 'file:///gone' }, position: { line: 0, character: 0 } }), /is not open/);
  await s.notify('no/such', {});
  await s.notify('textDocument/didChange', { nothing: true });
  await s.request(lsp.ShutdownRequest.type);
  await assert.rejects(s.request('textDocument/hover', {}), (e) => e.code === rpc.ErrorCodes.InvalidRequest);
  await s.notify(lsp.ExitNotification.type);
  assert.equal(await s.exited, 0);
});

test('a request that is taken back is answered once, as taken back', async () => {
  const s = new Session();
  await s.initialize();
  const uri = 'file:///x/long.recipe';
  const long = 'recipe: A\nmeasures: us\n' + '1 cup zarzaparilla paste\n'.repeat(3000);
  await s.open(uri, long);
  const source = new rpc.CancellationTokenSource();
  const busy = s.request(lsp.DocumentSymbolRequest.type, { textDocument: { uri } });
  const late = s.request(lsp.DocumentSymbolRequest.type, { textDocument: { uri } }, source.token);
  source.cancel();
  await assert.rejects(late, (e) => e.code === lsp.LSPErrorCodes.RequestCancelled);
  assert.equal((await busy).length, 1);
  await s.end();
});

test('of edits that follow each other only the last is spoken of', async () => {
  const s = new Session();
  await s.initialize();
  const uri = 'file:///x/a.recipe';
  await s.open(uri, 'recipe: A\nmeasures: us\n' + '1 cup zarzaparilla paste\n'.repeat(1000));
  let spoken = 0;
  s.connection.onNotification('textDocument/publishDiagnostics', (d) => {
    ++spoken;
    s.published.set(d.uri, d);
    s.waiting = s.waiting.filter((w) => !w());
  });
  for (let v = 2; v <= 101; ++v)
    s.change(uri, v, [{ range: { start: { line: 0, character: 8 }, end: { line: 0, character: 9 } }, text: String(v % 10) }]);
  await s.said(uri, 101);
  assert.ok(spoken < 50, `${spoken} times`);
  await s.end();
});

test('the end of input ends it', async () => {
  const s = new Session();
  await s.initialize();
  await s.open('file:///x/a.recipe', 'recipe: A\n1 g x\n');
  s.child.stdin.end();
  assert.equal(await s.exited, 1);
  const half = new Session();
  half.child.stdin.write('Content-Length: 500\r\n\r\n{"jsonrpc"');
  half.child.stdin.end();
  assert.equal(await half.exited, 1);
});

// Random edits of several parts keep the server's text the same as an independent model's: what is
// said of the last version is what is said of that text when it is opened afresh.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Session, TextDocument, lsp } from './session.mjs';

const seeds = process.env.SEED ? [Number(process.env.SEED)] : [1, 2, 3];
const bits = ['a', 'recipe: A', 'makes: 2 tarts', '200 g plain flour', '2 cupps 𝕏', ' ', '\n', '\r\n', '\r',
              '🍐', '👩‍🍳', 'é', 'e\u0301', '½', '# c 𝕏', '[', ']', '- Mix [flour].', '\t', '\u{1F1EB}\u{1F1F7}', ''];
const start = 'recipe: 𝕏 tart\r\nmakes: 2 tärts\n200 g plain flour   # 🍐\n0 g e\u0301\n- Mix [flöur] 👩‍🍳 [.\n';

/// A place that is no second half of a character: an editor's cursor never stands there.
function whole(text, offset) {
  const code = text.charCodeAt(offset);
  return code >= 0xdc00 && code < 0xe000 ? offset + 1 : offset;
}

for (const encoding of ['utf-16', 'utf-8'])
  for (const first_seed of seeds)
    test(`seed ${first_seed}, ${encoding}`, { timeout: 120000 }, async (t) => {
      let seed = first_seed;
      const random = (n) => (seed = (seed * 1103515245 + 12345) & 0x7fffffff) % n;
      const s = new Session();
      t.after(() => s.child.kill());
      await s.initialize({ general: { positionEncodings: [encoding] } });
      const uri = 'file:///nowhere/a.recipe', fresh = 'file:///nowhere/b.recipe';
      let doc = TextDocument.create(uri, 'recipe', 1, start);
      await s.open(uri, start);
      const position = (offset) => {
        const at = doc.positionAt(offset);
        if (encoding === 'utf-16') return at;
        const begin = doc.offsetAt({ line: at.line, character: 0 });
        return { line: at.line, character: Buffer.byteLength(doc.getText().slice(begin, doc.offsetAt(at))) };
      };
      for (let version = 2; version <= 400; ++version) {
        const changes = [];
        for (let i = 0; i <= random(3); ++i) {
          const text = doc.getText();
          const begin = whole(text, random(text.length + 1));
          const end = whole(text, Math.min(text.length, begin + random(12)));
          const range = { start: doc.positionAt(begin), end: doc.positionAt(end) };
          const change = { range: { start: position(begin), end: position(end) }, text: bits[random(bits.length)] };
          if (random(60) === 0) delete change.range, change.text = start;
          changes.push(change);
          TextDocument.update(doc, [change.range ? { range, text: change.text } : { text: change.text }], version);
        }
        await s.change(uri, version, changes);
        if (version % 40 !== 0) continue;
        await s.open(fresh, doc.getText(), version);
        assert.deepEqual(await s.said(uri, version), await s.said(fresh, version));
        // The text itself comes back in the edits that put it in order.
        const options = { tabSize: 2, insertSpaces: true };
        const edits = (of) => s.request(lsp.DocumentFormattingRequest.type, { textDocument: { uri: of }, options });
        assert.deepEqual(await edits(uri), await edits(fresh));
        await s.notify(lsp.DidCloseTextDocumentNotification.type, { textDocument: { uri: fresh } });
      }
      await s.end();
    });

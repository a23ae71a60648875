// The TextMate grammar by the library that editors use, and the words of both colourings.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const require = createRequire(join(process.env.NODE_PACKAGES, 'package.json'));
const oniguruma = require('vscode-oniguruma');
const { Registry, INITIAL, parseRawGrammar } = require('vscode-textmate');
const file = join(process.env.EDITOR_FILES, 'vscode/syntaxes/recipe.tmLanguage.json');

async function grammar() {
  await oniguruma.loadWASM(readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm')));
  const registry = new Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (s) => new oniguruma.OnigString(s),
    }),
    loadGrammar: async () => parseRawGrammar(readFileSync(file, 'utf8'), file),
  });
  return registry.loadGrammar('text.recipe');
}
const recipe_grammar = grammar();

/// `keyword.control:recipe` for each part of a line that has a scope of its own.
async function coloured(lines) {
  const g = await recipe_grammar;
  let state = INITIAL;
  return lines.map((line) => {
    const result = g.tokenizeLine(line, state);
    state = result.ruleStack;
    return result.tokens
      .map((t) => [t.scopes.at(-1).replace(/\.recipe$/, ''), line.slice(t.startIndex, t.endIndex)])
      .filter(([scope]) => scope !== 'text');
  });
}

test('settings, lines, steps, brackets and comments each have their colour', async () => {
  const lines = [
    'component: Sweet pastry   # C#',
    'keeps: 3 days chilled',
    '2 cups = 250 g   plain flour, sifted',
    '1½ tsp      crème fraîche or 抹茶  # c',
    'about 100 g fine salt',
    'some        flour',
    '4 x 400 g   tomatoes',
    '3-4         lemons',
    '- Rub [butter: half] into [flour] for [3 min] \\[not\\].',
    '  Go on [overnight] with [gas 4] and [rest].',
    '# alone',
    'nonsense: here',
  ];
  assert.deepEqual(await coloured(lines), [
    [['keyword.control', 'component'], ['punctuation.separator.key-value', ':'],
     ['entity.name.section', 'Sweet pastry   '], ['comment.line.number-sign', '# C#']],
    [['keyword.other.setting', 'keeps'], ['punctuation.separator.key-value', ':'],
     ['string.unquoted', '3 days chilled']],
    [['constant.numeric', '2'], ['support.type.measure', 'cups'], ['variable.other.ingredient', ' '],
     ['keyword.operator', '='], ['variable.other.ingredient', ' '], ['constant.numeric', '250'],
     ['variable.other.ingredient', ' '], ['support.type.measure', 'g'],
     ['variable.other.ingredient', '   plain flour'], ['string.unquoted.preparation', ', sifted']],
    [['constant.numeric', '1½'], ['support.type.measure', 'tsp'],
     ['variable.other.ingredient', '      crème fraîche '], ['keyword.operator', 'or'],
     ['variable.other.ingredient', ' 抹茶  '], ['comment.line.number-sign', '# c']],
    [['constant.numeric', 'about 100'], ['support.type.measure', 'g'], ['variable.other.ingredient', ' fine salt']],
    [['constant.numeric', 'some'], ['variable.other.ingredient', 'flour']],
    [['constant.numeric', '4 x 400'], ['support.type.measure', 'g'], ['variable.other.ingredient', '   tomatoes']],
    [['constant.numeric', '3-4'], ['variable.other.ingredient', 'lemons']],
    [['punctuation.definition.list.begin', '-'],
     ['punctuation.section.brackets.begin', '['], ['variable.other.ingredient', 'butter'],
     ['punctuation.separator.key-value', ':'], ['constant.numeric', 'half'], ['punctuation.section.brackets.end', ']'],
     ['punctuation.section.brackets.begin', '['], ['variable.other.ingredient', 'flour'], ['punctuation.section.brackets.end', ']'],
     ['punctuation.section.brackets.begin', '['], ['constant.numeric', '3 min'], ['punctuation.section.brackets.end', ']'],
     ['constant.character.escape', '\\['], ['constant.character.escape', '\\]']],
    [['punctuation.section.brackets.begin', '['], ['constant.numeric', 'overnight'], ['punctuation.section.brackets.end', ']'],
     ['punctuation.section.brackets.begin', '['], ['constant.numeric', 'gas 4'], ['punctuation.section.brackets.end', ']'],
     ['punctuation.section.brackets.begin', '['], ['constant.numeric', 'rest'], ['punctuation.section.brackets.end', ']']],
    [['comment.line.number-sign', '# alone']],
    [],
  ].map((line) => line.map(([scope, words]) => [scope, words])));
});

test('every setting of the language has its colour', async () => {
  const language = readFileSync(join(process.env.SOURCE, 'grammar/LANGUAGE.md'), 'utf8');
  const table = language.split('<!-- table: settings -->')[1].split('<!-- end of table -->')[0];
  const words = [...table.matchAll(/^\| `([a-z-]+):` \|/gm)].map((m) => m[1]);
  assert.ok(words.length > 30);
  const vim = readFileSync(join(process.env.EDITOR_FILES, 'vim/syntax/recipe.vim'), 'utf8');
  for (const word of words) {
    const [[key]] = await coloured([`${word}: x`]);
    assert.match(key[0], /^keyword\./, word);
    assert.equal(key[1], word);
    assert.match(vim, new RegExp(`^syn (keyword|match) recipe(Key|Opens).*[ (|]${word}([ )|]|$)`, 'm'), word);
  }
});

test('of the examples every line but empty ones and running text has a colour', async () => {
  for (const name of readdirSync(join(process.env.SOURCE, 'examples')).filter((n) => n.endsWith('.recipe'))) {
    const lines = readFileSync(join(process.env.SOURCE, 'examples', name), 'utf8').split('\n');
    (await coloured(lines)).forEach((tokens, i) => {
      if (lines[i] && !lines[i].startsWith(' ')) assert.notDeepEqual(tokens, [], `${name}: ${lines[i]}`);
    });
  }
});

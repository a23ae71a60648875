// The extension packages, whole and offline, and finds the program where it may be.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const extension = process.env.EXTENSION;
const require = createRequire(join(extension, 'package.json'));
const { find_program } = require('./find_program.js');

test('it packages with all that it names', () => {
  rmSync(join(extension, 'benchcard-recipes.vsix'), { force: true });
  execFileSync('npm', ['run', 'package'], { cwd: extension, stdio: 'pipe' });
  const zip = readFileSync(join(extension, 'benchcard-recipes.vsix'));
  assert.equal(zip.subarray(0, 2).toString(), 'PK');
  const { main, contributes } = JSON.parse(readFileSync(join(extension, 'package.json'), 'utf8'));
  const named = [main, contributes.languages[0].configuration, contributes.grammars[0].path];
  for (const path of named) // each name stands in the archive's directory as it is
    assert.ok(zip.includes(path.replace('./', 'extension/')), path);
  assert.ok(!zip.includes('node_modules/'));
  const bundle = readFileSync(join(extension, main), 'utf8');
  assert.match(bundle, /language-server/);
  assert.doesNotMatch(bundle, /require\("vscode-languageclient/);
});

test('the program is taken as set, from the PATH, or from where it is built', () => {
  const at = mkdtempSync(join(tmpdir(), 'benchcard-find.'));
  const program = (folder) => {
    mkdirSync(join(at, folder), { recursive: true });
    const path = join(at, folder, 'benchcard');
    writeFileSync(path, '#!/bin/sh\n');
    chmodSync(path, 0o755);
    return path;
  };
  const set = program('set'), bin = program('bin'), built = program('house/build');
  const house = join(at, 'house'), path = `${join(at, 'none')}:${join(at, 'bin')}`;
  assert.equal(find_program(set, [house], path), set);
  assert.equal(find_program(join(at, 'gone'), [house], path), undefined);
  assert.equal(find_program('', [house], path), bin);
  assert.equal(find_program('', [house], ''), built);
  assert.equal(find_program('', [], ''), undefined);
  chmodSync(bin, 0o644);
  assert.equal(find_program('', [house], path), built);
  rmSync(at, { recursive: true });
});

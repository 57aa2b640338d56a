// Runs the tests that live inside the editor.
// `node scripts/host-tests.mjs node` in the Node extension host; `node scripts/host-tests.mjs web` in the browser's.
// TEST_EDITOR=desktop runs the first ones in a VS Code that is downloaded, instead of the editor server.
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runTests } from '@vscode/test-electron';
import { buildNodeHostTests, buildWebHostTests } from './build-tests.mjs';
import { removeAtExit, root } from './processes.mjs';

/** A new folder that is removed at the end. Short, since sockets are made below it. */
function scratchFolder() {
  return removeAtExit(mkdtempSync(join(tmpdir(), 'mtj-')));
}

/** The folder that the tests are given: a copy of `test/host/workspace`. */
function scratchWorkspace() {
  const folder = join(scratchFolder(), 'workspace');
  cpSync(join(root, 'test', 'host', 'workspace'), folder, { recursive: true });
  return folder;
}

/**
 * @param {{ extension: string, tests: string, desktop: boolean }} options
 */
async function runInEditor({ extension, tests, desktop }) {
  const profile = scratchFolder();
  await runTests({
    ...(desktop ? {} : { vscodeExecutablePath: join(root, 'scripts', 'editor-executable.mjs') }),
    extensionDevelopmentPath: extension,
    extensionTestsPath: tests,
    launchArgs: [
      scratchWorkspace(),
      `--user-data-dir=${join(profile, 'data')}`,
      `--extensions-dir=${join(profile, 'extensions')}`,
    ],
  });
}

/** A copy of the extension with only its `browser` entry, which the editor then runs in the browser's worker. */
function stageWebExtension() {
  const stage = join(scratchFolder(), 'extension');
  mkdirSync(stage);
  const { main: _, ...manifest } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  if (!manifest.browser)
    throw new Error('package.json names no "browser" entry: the extension has no web build.');
  writeFileSync(join(stage, 'package.json'), JSON.stringify(manifest));
  for (const part of ['dist', 'media', 'syntaxes', 'l10n', 'package.nls.json']) {
    const wanted = (/** @type {string} */ path) => !path.startsWith(join(root, 'media', 'screenshots'));
    if (existsSync(join(root, part)))
      cpSync(join(root, part), join(stage, part), { recursive: true, filter: wanted });
  }
  cpSync(join(root, 'out', 'host', 'web'), join(stage, 'tests'), { recursive: true });
  return stage;
}

/** Runs `test/host/node` inside the Node extension host. */
async function runNodeHostTests() {
  await buildNodeHostTests();
  await runInEditor({
    extension: root,
    tests: join(root, 'out', 'host', 'node', 'run-node.js'),
    desktop: process.env.TEST_EDITOR === 'desktop',
  });
}

/** Runs `test/host/web` inside the browser's worker extension host. */
async function runWebHostTests() {
  await buildWebHostTests();
  const extension = stageWebExtension();
  await runInEditor({ extension, tests: join(extension, 'tests', 'run-web.js'), desktop: false });
}

const hosts = { node: runNodeHostTests, web: runWebHostTests };
const name = process.argv[2];
if (name !== 'node' && name !== 'web') {
  console.error('Say which tests: node or web.');
  process.exitCode = 2;
} else {
  try {
    await hosts[name]();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}

// Runs the grammar tests in `test/grammar/` over the Markdown grammar of the development packages, and once more
// over the one of the downloaded editor, when there is one.
// `node scripts/test-grammar.mjs`
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const runner = join(root, 'node_modules/vscode-tmgrammar-test/dist/unit.js');

/** Grammar files of the development packages: Markdown, and what it takes in for HTML and front matter. */
const packaged = ['markdown', 'html-derivative', 'html', 'yaml'].map((name) =>
  join(root, `node_modules/tm-grammars/grammars/${name}.json`),
);

/** The same grammars as the downloaded editor ships them, or `undefined` when no editor is there. */
function grammarsOfEditor() {
  const downloads = join(root, '.vscode-test');
  if (!existsSync(downloads)) return undefined;
  const found = readdirSync(downloads, { recursive: true })
    .map(String)
    .find((path) => path.endsWith(join('markdown-basics', 'syntaxes', 'markdown.tmLanguage.json')));
  if (found === undefined) return undefined;
  const extensions = join(downloads, found, '../../..');
  return ['markdown-basics', 'html', 'yaml'].flatMap((extension) => {
    const folder = join(extensions, extension, 'syntaxes');
    return readdirSync(folder)
      .filter((name) => name.endsWith('.json'))
      .map((name) => join(folder, name));
  });
}

/**
 * Runs every grammar test over `grammars`; true when all of them pass.
 * @param {string} title
 * @param {readonly string[]} grammars
 */
function run(title, grammars) {
  console.log(`Grammar tests over ${title}`);
  const options = grammars.flatMap((path) => ['--grammar', path]);
  const result = spawnSync(process.execPath, [runner, ...options, 'test/grammar/*.test.md'], {
    cwd: root,
    encoding: 'utf8',
  });
  process.stdout.write(result.stdout);
  // The Markdown grammar names dozens of languages for its fenced blocks; none of them matters here.
  const messages = result.stderr.split('\n').filter((line) => !line.startsWith('grammar not found for '));
  process.stderr.write(messages.join('\n'));
  return result.status === 0;
}

const ofEditor = grammarsOfEditor();
const runs = [run('the packaged Markdown grammar', packaged)];
if (ofEditor !== undefined) runs.push(run("the editor's own Markdown grammar", ofEditor));
process.exitCode = runs.every((passed) => passed) ? 0 : 1;

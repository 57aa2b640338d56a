// Bundles the test files into `out/`: pure tests and the tests of a person's path as ES modules for Node, host tests as
// CommonJS for the editor.
// `node scripts/build-tests.mjs`
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import esbuild from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The folders of tests that need no editor. */
const pureFolders = [
  'notation',
  'journal',
  'training',
  'planning',
  'published',
  'command-line',
  'editor-pages',
  'editor-views',
  'fuzz',
  'hostile',
  'package',
  'patterns',
  'scripts',
];

/**
 * Paths, from the project root, of every file below `folder` whose name ends in `ending`.
 * @param {string} folder
 * @param {string} ending
 */
export function filesBelow(folder, ending) {
  if (!existsSync(`${root}${folder}`)) return [];
  return readdirSync(`${root}${folder}`, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => `${entry.parentPath ?? entry.path}/${entry.name}`.replace(root, '').replaceAll('\\', '/'))
    .sort();
}

/**
 * Scripts find the project by their own place, so tests import them from where they are.
 * @type {import('esbuild').Plugin}
 */
const scriptsStayOutside = {
  name: 'scripts-stay-outside',
  setup(build) {
    build.onResolve({ filter: /\/scripts\/[^/]+\.mjs$/ }, ({ path, resolveDir }) => ({
      path: pathToFileURL(resolve(resolveDir, path)).href,
      external: true,
    }));
  },
};

/**
 * @param {string[]} entryPoints
 * @param {string} outdir
 */
async function buildForNode(entryPoints, outdir) {
  rmSync(`${root}${outdir}`, { recursive: true, force: true });
  await esbuild.build({
    absWorkingDir: root,
    entryPoints,
    outdir,
    outbase: 'test',
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    plugins: [scriptsStayOutside],
    sourcemap: 'linked',
    logLevel: 'warning',
  });
}

/** Builds pure tests into `out/pure`. */
export async function buildPureTests() {
  await buildForNode(
    pureFolders.flatMap((folder) => filesBelow(`test/${folder}`, '.test.ts')),
    'out/pure',
  );
}

/** Builds benches into `out/bench`. */
export async function buildBenches() {
  await buildForNode(filesBelow('test/bench', '.bench.ts'), 'out/bench');
}

/** Builds the tests of single pages in a browser, without an editor, into `out/page-tests`. */
export async function buildPageTests() {
  await buildForNode(filesBelow('test/host/pages', '.test.ts'), 'out/page-tests');
}

/** Builds the tests of a person's path, which run outside the editor and drive it, into `out/person`. */
export async function buildPersonTests() {
  await buildForNode(filesBelow('test/host/person', '.test.ts'), 'out/person');
}

/** Builds the tests that run inside the editor's Node extension host, and their runner, into `out/host/node`. */
export async function buildNodeHostTests() {
  rmSync(`${root}out/host/node`, { recursive: true, force: true });
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: ['test/host/run-node.ts', ...filesBelow('test/host/node', '.test.ts')],
    outdir: 'out/host/node',
    outbase: 'test/host',
    bundle: true,
    format: 'cjs',
    platform: 'node',
    target: 'node20',
    // Mocha is one for the runner and all the files; it is read from node_modules.
    external: ['vscode', 'mocha'],
    sourcemap: 'linked',
    logLevel: 'warning',
  });
}

/** Builds the tests that run inside the editor's web worker extension host into one file, `out/host/web/run-web.js`. */
export async function buildWebHostTests() {
  rmSync(`${root}out/host/web`, { recursive: true, force: true });
  const files = filesBelow('test/host/web', '.test.ts');
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: ['test/host/run-web.ts'],
    outdir: 'out/host/web',
    bundle: true,
    format: 'cjs',
    platform: 'browser',
    target: 'es2022',
    conditions: ['worker'],
    define: { global: 'globalThis' },
    alias: { 'node:assert/strict': `${root}test/host/assert-in-worker.ts` },
    external: ['vscode'],
    plugins: [
      {
        name: 'all-web-tests',
        setup(build) {
          build.onResolve({ filter: /^all-web-tests$/ }, () => ({ path: 'all', namespace: 'all-web-tests' }));
          build.onLoad({ filter: /.*/, namespace: 'all-web-tests' }, () => ({
            contents: files.map((file) => `require(${JSON.stringify(`./${file}`)});`).join('\n'),
            resolveDir: root,
          }));
        },
      },
    ],
    sourcemap: 'inline',
    logLevel: 'warning',
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildPureTests();

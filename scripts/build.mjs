// Bundles what ships: the Node and the web extension, the command line, and the pages.
// `node scripts/build.mjs [--watch]`
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import esbuild from 'esbuild';
import { licencesOf } from './licences.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

/** @type {import('esbuild').BuildOptions} */
const shared = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  sourcemap: true,
  sourcesContent: false,
  target: 'es2022',
  logLevel: 'warning',
  legalComments: 'none',
};

/** A fingerprint of the sources that read notes, so that no version of the extension takes what another one kept. */
function readerFingerprint() {
  const hash = createHash('sha256');
  for (const folder of ['src/notation', 'src/journal'])
    for (const entry of readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
      .sort())
      hash
        .update(`${entry.slice(root.length)}\0`)
        .update(readFileSync(entry))
        .update('\0');
  return hash.digest('hex').slice(0, 16);
}

/**
 * One set of esbuild options a bundle.
 * @returns {import('esbuild').BuildOptions[]}
 */
export function bundles() {
  const pages = existsSync(`${root}src/pages`)
    ? readdirSync(`${root}src/pages`).filter((name) => name.endsWith('-page.ts'))
    : [];
  const define = { READER_FINGERPRINT: JSON.stringify(readerFingerprint()) };
  /** @type {(import('esbuild').BuildOptions & { entryPoints: Record<string, string> })[]} */
  const all = [
    {
      ...shared,
      entryPoints: { extension: 'src/extension.ts' },
      outdir: 'dist',
      platform: 'node',
      format: 'cjs',
      external: ['vscode'],
      define,
    },
    {
      ...shared,
      entryPoints: { extension: 'src/extension.web.ts' },
      outdir: 'dist/web',
      platform: 'browser',
      format: 'cjs',
      external: ['vscode'],
      define,
      // Without `worker` the Markdown reader's entity decoder picks a build that needs a document.
      conditions: ['worker'],
    },
    {
      ...shared,
      entryPoints: { 'command-line': 'src/command-line.ts' },
      outdir: 'dist',
      platform: 'node',
      format: 'cjs',
    },
    {
      ...shared,
      entryPoints: Object.fromEntries(pages.map((name) => [name.replace(/\.ts$/, ''), `src/pages/${name}`])),
      outdir: 'dist/pages',
      platform: 'browser',
      format: 'iife',
    },
  ];
  return all
    .filter((options) => Object.values(options.entryPoints).every((file) => existsSync(`${root}${file}`)))
    .filter((options) => Object.keys(options.entryPoints).length > 0);
}

/** Builds everything into `dist/`, with the licences of what is in it; throws when a bundle has an error. */
export async function build() {
  rmSync(`${root}dist`, { recursive: true, force: true });
  const built = await Promise.all(bundles().map((options) => esbuild.build({ ...options, metafile: true })));
  writeFileSync(`${root}dist/licences.txt`, licencesOf(built.map(({ metafile }) => metafile)));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  if (process.argv.includes('--watch')) {
    for (const options of bundles()) await (await esbuild.context(options)).watch();
  } else {
    await build();
  }
}

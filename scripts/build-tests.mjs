// Bundles the test files into `out/`: pure tests as ES modules for Node, host tests as CommonJS for the editor.
// `node scripts/build-tests.mjs`
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import esbuild from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Paths, from the project root, of every file below `folder` whose name ends in `ending`. */
export function filesBelow(folder, ending) {
  if (!existsSync(`${root}${folder}`)) return [];
  return readdirSync(`${root}${folder}`, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => `${entry.parentPath ?? entry.path}/${entry.name}`.replace(root, ''))
    .sort();
}

/** Builds pure tests and benches into `out/pure`. */
export async function buildPureTests() {
  rmSync(`${root}out/pure`, { recursive: true, force: true });
  const folders = ['notation', 'journal', 'training', 'planning', 'published', 'package', 'bench'];
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: folders.flatMap((folder) => [
      ...filesBelow(`test/${folder}`, '.test.ts'),
      ...filesBelow(`test/${folder}`, '.bench.ts'),
    ]),
    outdir: 'out/pure',
    outbase: 'test',
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    sourcemap: 'linked',
    logLevel: 'warning',
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildPureTests();

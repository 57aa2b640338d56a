// `npm run package`: builds the extension and packs it into one VSIX file, which the editor installs.
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { install } from './install.mjs';
import { root } from './processes.mjs';

/**
 * Builds and packs. `.vscodeignore` says what goes in; every library is bundled, so `node_modules` does not.
 * @param {string} [file] where to write; `markdown-training-journal-VERSION.vsix` in the project's folder when absent
 * @returns {Promise<string>} the path of the file
 */
export async function packageExtension(file) {
  const { build } = await import('./build.mjs');
  const { createVSIX } = await import('@vscode/vsce');
  const { name, version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const packagePath = file ?? join(root, `${name}-${version}.vsix`);
  await build();
  await createVSIX({
    cwd: root,
    packagePath,
    dependencies: false,
    allowMissingRepository: true,
    rewriteRelativeLinks: false,
  });
  return packagePath;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await install();
  const file = await packageExtension();
  console.log(`${file}: ${Math.ceil(statSync(file).size / 1024)} KB`);
}

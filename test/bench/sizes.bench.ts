// What ships: the size of each script as it is minified, and of the package that the editor installs.
import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { packageExtension } from '../../scripts/package.mjs';
import { printRow } from './table';

const folder = mkdtempSync(join(tmpdir(), 'bench-package-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
const file = await packageExtension(join(folder, 'extension.vsix'));
const kilobytes = (path: string) => `${Math.round(statSync(path).size / 1000)} kB`;
printRow('Extension, minified: Node host', 'at most 300 kB', kilobytes('dist/extension.js'));
printRow('Extension, minified: browser host', 'at most 300 kB', kilobytes('dist/web/extension.js'));
const pages = readdirSync('dist/pages').filter((name) => name.endsWith('.js'));
printRow(
  'Pages, minified',
  'at most 300 kB each',
  pages.map((name) => `${name.replace('.js', '')} ${kilobytes(join('dist/pages', name))}`).join(', '),
);
printRow('The package (VSIX)', 'at most 1 MB', kilobytes(file));

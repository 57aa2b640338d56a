import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { packageExtension } from '../../scripts/package.mjs';
import { type ZipEntry, zipEntries } from './zip-entries';

describe('the packed extension', () => {
  const folder = mkdtempSync(join(tmpdir(), 'vsix-'));
  const file = join(folder, 'extension.vsix');
  let entries: readonly ZipEntry[] = [];

  before(async function () {
    this.timeout(120_000);
    await packageExtension(file);
    entries = zipEntries(readFileSync(file));
  });

  after(() => rmSync(folder, { recursive: true }));

  const mayHold = [
    /^extension\.vsixmanifest$/,
    /^\[Content_Types\]\.xml$/,
    /^extension\/package(\.nls(\.[a-z-]+)?)?\.json$/,
    /^extension\/(readme|changelog)\.md$/,
    /^extension\/LICENSE\.txt$/,
    /^extension\/dist\/(extension|command-line)\.js$/,
    /^extension\/dist\/licences\.txt$/,
    /^extension\/dist\/web\/extension\.js$/,
    /^extension\/dist\/pages\/[a-z-]+-page\.(js|css)$/,
    /^extension\/l10n\/bundle\.l10n(\.[a-z-]+)?\.json$/,
    /^extension\/media\/((pages|preview)\/)?[a-z-]+\.(svg|png|css)$/,
    /^extension\/media\/guide\/([a-z-]+\/)?[A-Za-z0-9-]+\.(md|svg|png)$/,
    /^extension\/syntaxes\/[a-z-]+\.tmLanguage\.json$/,
  ];
  const mustHold = [
    'extension/package.json',
    'extension/readme.md',
    'extension/changelog.md',
    'extension/LICENSE.txt',
    'extension/dist/extension.js',
    'extension/dist/licences.txt',
    'extension/dist/web/extension.js',
    'extension/dist/command-line.js',
    'extension/media/icon.png',
    'extension/media/guide/README.md',
    'extension/syntaxes/training-journal.tmLanguage.json',
  ];

  it('holds only what ships: no source, test, map or library folder', () => {
    const strange = entries
      .map(({ path }) => path)
      .filter((path) => !mayHold.some((shape) => shape.test(path)));
    assert.deepEqual(strange, []);
  });

  it('holds all that an installed extension needs', () => {
    const paths = new Set(entries.map(({ path }) => path));
    assert.deepEqual(
      mustHold.filter((path) => !paths.has(path)),
      [],
    );
  });

  it('holds every file that its manifest names', () => {
    const paths = new Set(entries.map(({ path }) => path));
    const manifest = readFileSync(join(process.cwd(), 'package.json'), 'utf8');
    const named = [...manifest.matchAll(/"(?:\.\/)?((?:dist|media|syntaxes|l10n)\/[^"]+\.[a-z]+)"/g)].map(
      ([, path]) => `extension/${path}`,
    );
    assert.ok(named.length > 0);
    assert.deepEqual(
      named.filter((path) => !paths.has(path)),
      [],
    );
  });

  // Large enough for a library or two more, small enough to notice a forgotten picture or an unbundled folder.
  it('is smaller than 3 MB', () => {
    assert.ok(statSync(file).size < 3_000_000, `${statSync(file).size} bytes`);
  });
});

describe('reading a zip archive', () => {
  it('refuses what is not one', () => {
    assert.throws(
      () => zipEntries(Buffer.from('not an archive, but long enough to be one')),
      /no end record/,
    );
  });
});

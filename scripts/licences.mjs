// The licences of the libraries that the bundles hold, as one text that ships beside them.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './processes.mjs';

/**
 * Names of the packages of which bundles hold a part, sorted.
 * @param {readonly import('esbuild').Metafile[]} metafiles what esbuild tells of the bundles
 */
export function packagesIn(metafiles) {
  const names = new Set();
  for (const { outputs } of metafiles)
    for (const { inputs } of Object.values(outputs))
      for (const [path, { bytesInOutput }] of Object.entries(inputs)) {
        const [, name] = /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path) ?? [];
        if (name !== undefined && bytesInOutput > 0) names.add(name);
      }
  return [...names].sort();
}

/**
 * The licence of one package: its name, version, terms, where its source is, and the text of its licence file.
 * @param {string} name
 * @throws when the package has no licence file and names no terms: it may not be shipped
 */
function licenceOf(name) {
  const folder = join(root, 'node_modules', name);
  const { version, license, repository, homepage } = JSON.parse(
    readFileSync(join(folder, 'package.json'), 'utf8'),
  );
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying)/i.test(entry));
  if (license === undefined && file === undefined) throw new Error(`${name} names no licence.`);
  const source = typeof repository === 'string' ? repository : (repository?.url ?? homepage ?? '');
  const text = file === undefined ? '' : `\n${readFileSync(join(folder, file), 'utf8').trim()}\n`;
  return `${name} ${version}\nLicence: ${license}\nSource: ${source}\n${text}`;
}

/**
 * The licences of every package in these bundles.
 * @param {readonly import('esbuild').Metafile[]} metafiles
 */
export function licencesOf(metafiles) {
  const parts = packagesIn(metafiles).map(licenceOf);
  return [`This extension holds parts of ${parts.length} libraries, under these licences.\n`, ...parts].join(
    `\n${'-'.repeat(78)}\n\n`,
  );
}

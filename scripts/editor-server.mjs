// The editor as a server: the same workbench and the same extension host as the desktop editor, from the package
// registry, so that it also runs where no editor is installed and none can be downloaded.
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { removeAtExit, root, runNpm, startProcess, stopProcess } from './processes.mjs';

/** The last release that runs on Node 20; it is VS Code 1.100.3. */
const serverPackage = 'code-server@4.100.3';
/** The search program, as a package that carries its binary. */
const searchPackage = '@vscode/ripgrep@1.18.0';

const home = join(root, '.vscode-test', 'server');
const serverPath = join('node_modules', 'code-server', 'lib', 'vscode');

/** The editor server could not be installed or started; the message is for people. */
export class EditorServerError extends Error {
  /** @override */
  name = 'EditorServerError';
}

/**
 * @param {readonly string[]} args
 * @param {string} cwd
 */
async function npmInstall(args, cwd) {
  const options = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  let output = '';
  for (let attempt = 1; attempt <= 3; attempt += 1) {
    const result = await runNpm(['install', ...args, ...options], { cwd, quiet: true });
    if (result.code === 0) return;
    output = result.output;
    if (attempt < 3) await new Promise((resolve) => setTimeout(resolve, 2000 * attempt));
  }
  throw new EditorServerError(
    `The editor server (${serverPackage}) could not be installed from the package registry, after three tries. ` +
      'It is fetched once; with a connection, run the same command again. With VS Code installed, ' +
      `"npm start -- --editor desktop" and "TEST_EDITOR=desktop npm test" do without it.\n${output.trim()}`,
  );
}

/**
 * Puts the search program where the server looks for it.
 * @param {string} folder where both packages are installed
 */
function placeSearchProgram(folder) {
  const name = process.platform === 'win32' ? 'rg.exe' : 'rg';
  const packages = join(folder, 'node_modules', '@vscode');
  const binary = readdirSync(packages)
    .filter((entry) => entry.startsWith('ripgrep-'))
    .map((entry) => join(packages, entry, 'bin', name))
    .find((file) => existsSync(file));
  if (!binary)
    throw new EditorServerError(`${searchPackage} has no search program for this kind of machine.`);
  const bin = join(folder, serverPath, 'node_modules', '@vscode', 'ripgrep', 'bin');
  mkdirSync(bin, { recursive: true });
  copyFileSync(binary, join(bin, name));
}

/**
 * Installs the server into `.vscode-test/server`, once. It is made beside that folder and renamed when it is whole, so
 * an interrupted run leaves nothing half done.
 * @returns {Promise<string>} the folder of the server
 * @throws {EditorServerError} when there is no registry, or it has no server for this machine
 */
export async function installEditorServer() {
  const wanted = JSON.stringify({ serverPackage, searchPackage });
  const stamp = join(home, 'installed.json');
  if (!existsSync(stamp) || readFileSync(stamp, 'utf8') !== wanted) {
    console.log('Installing the editor server (once, about half a minute) ...');
    const partial = removeAtExit(`${home}-${process.pid}`);
    rmSync(partial, { recursive: true, force: true });
    mkdirSync(partial, { recursive: true });
    writeFileSync(join(partial, 'package.json'), '{ "private": true }\n');
    await npmInstall([serverPackage, searchPackage], partial);
    await npmInstall(['--omit=dev'], join(partial, serverPath));
    placeSearchProgram(partial);
    writeFileSync(join(partial, 'installed.json'), wanted);
    rmSync(home, { recursive: true, force: true });
    renameSync(partial, home);
  }
  return join(home, serverPath);
}

/** Settings of a calm first start: no welcome pages, nothing asked, nothing sent. */
export const calmSettings = Object.freeze({
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.welcomePage.walkthroughs.openOnInstall': false,
  'workbench.enableExperiments': false,
  'security.workspace.trust.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'chat.commandCenter.enabled': false,
  'files.autoSave': 'off',
  'git.enabled': false,
  'remote.autoForwardPorts': false,
  'files.simpleDialog.enable': true,
});

/**
 * @typedef {object} EditorServer
 * @property {string} address `http://127.0.0.1:PORT`
 * @property {number} port
 * @property {number} pid
 * @property {string} dataFolder scratch: settings and logs
 * @property {() => string} output what the server has printed so far
 * @property {Promise<void>} ended kept when the server has ended, by itself or not
 * @property {() => Promise<void>} stop ends the server and removes its scratch folder
 */

/**
 * Starts a server on this machine only and waits until it answers. Settings and extensions lie in scratch folders.
 * @param {{ port?: number, settings?: Readonly<Record<string, unknown>> }} [options] `port`: 0 or absent takes a free one;
 *   `settings` are laid over the calm ones
 * @returns {Promise<EditorServer>}
 * @throws {EditorServerError}
 */
export async function startEditorServer({ port = 0, settings = {} } = {}) {
  const folder = await installEditorServer();
  // Short, since sockets are made below it, and their paths may not be longer than 103 characters.
  const dataFolder = removeAtExit(mkdtempSync(join(tmpdir(), 'mtj-')));
  const userFolder = join(dataFolder, 'data', 'User');
  mkdirSync(userFolder, { recursive: true });
  mkdirSync(join(dataFolder, 'extensions'));
  writeFileSync(
    join(userFolder, 'settings.json'),
    `${JSON.stringify({ ...calmSettings, ...settings }, undefined, 2)}\n`,
  );
  const child = startProcess(
    process.execPath,
    [
      join(folder, 'out', 'server-main.js'),
      ...['--host', '127.0.0.1', '--port', String(port), '--without-connection-token'],
      ...['--accept-server-license-terms', '--telemetry-level', 'off'],
      ...['--server-data-dir', dataFolder, '--extensions-dir', join(dataFolder, 'extensions')],
    ],
    {
      group: true,
      cwd: dataFolder,
      stdio: ['ignore', 'pipe', 'pipe'],
      // No marketplace: nothing here may look for one.
      env: { ...process.env, EXTENSIONS_GALLERY: '{"serviceUrl":""}' },
    },
  );
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream?.on('data', (data) => {
      output += data.toString();
    });
  }
  /** @type {Promise<void>} */
  const ended = new Promise((resolve) => child.once('exit', () => resolve()));
  const stop = async () => {
    await stopProcess(child);
    rmSync(dataFolder, { recursive: true, force: true, maxRetries: 3 });
  };
  const deadline = Date.now() + 60_000;
  while (Date.now() < deadline && child.exitCode === null && child.signalCode === null) {
    const bound = Number(/agent listening on (\d+)/.exec(output)?.[1] ?? 0);
    if (bound > 0 && (await answers(`http://127.0.0.1:${bound}/`))) {
      const address = `http://127.0.0.1:${bound}`;
      return { address, port: bound, pid: child.pid ?? 0, dataFolder, output: () => output, ended, stop };
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  await stop();
  const why = /EADDRINUSE/.test(output) ? `Port ${port} is taken on this machine; choose another. ` : '';
  throw new EditorServerError(`The editor server did not start. ${why}It said:\n${output.trim()}`);
}

/** @param {string} address */
async function answers(address) {
  try {
    return (await fetch(address, { signal: AbortSignal.timeout(5000) })).ok;
  } catch {
    return false;
  }
}

/**
 * The address of a workbench page.
 * @param {EditorServer} server
 * @param {{ folder: string, extension: string, tests?: string }} page absolute paths; with `tests`, the page runs that
 *   module's `run()` instead of waiting for a person
 */
export function workbenchAddress(server, { folder, extension, tests }) {
  const remote = (/** @type {string} */ path) => `vscode-remote://127.0.0.1:${server.port}${asUriPath(path)}`;
  const payload = [['extensionDevelopmentPath', remote(tests ? extension : besideServer(server, extension))]];
  if (tests) payload.push(['extensionTestsPath', remote(tests)], ['skipWelcome', 'true']);
  const query = new URLSearchParams({ folder: asUriPath(folder), payload: JSON.stringify(payload) });
  return `${server.address}/?${query}`;
}

/**
 * The path under which the editor is to load the extension. The server is installed below the project; an editor that
 * loads the project by its own path takes the server's own colour themes for themes that are being developed, and
 * begins with the first of them instead of the one that the settings name. A link elsewhere keeps the two apart.
 * @param {EditorServer} server
 * @param {string} extension
 */
function besideServer(server, extension) {
  if (extension !== root) return extension;
  const link = join(server.dataFolder, 'extension');
  if (!existsSync(link)) symlinkSync(extension, link, 'junction');
  return link;
}

/** @param {string} path an absolute path of this machine */
function asUriPath(path) {
  return process.platform === 'win32' ? `/${path.replaceAll('\\', '/')}` : path;
}

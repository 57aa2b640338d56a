// Starting, following and ending processes. Node built-ins only: this runs before anything is installed.
import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The project's folder, without a slash at its end. */
export const root = fileURLToPath(new URL('..', import.meta.url)).replace(/[\\/]$/, '');

/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set();
/** @type {Set<string>} */
const scratch = new Set();
let hooked = false;

/** Ends what is still running and removes what is still lying about when this process ends, however it ends. */
function hookExit() {
  if (hooked) return;
  hooked = true;
  process.on('exit', () => {
    for (const child of running) child.kill('SIGTERM');
    for (const folder of scratch) rmSync(folder, { recursive: true, force: true });
  });
  for (const [signal, number] of /** @type {const} */ ([
    ['SIGINT', 2],
    ['SIGTERM', 15],
    ['SIGHUP', 1],
  ])) {
    process.on(signal, () => process.exit(128 + number));
  }
}

/**
 * Has a folder removed when this process ends.
 * @param {string} folder
 * @returns {string} the same folder
 */
export function removeAtExit(folder) {
  hookExit();
  scratch.add(folder);
  return folder;
}

/**
 * Starts a process that ends with this one at the latest.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {import('node:child_process').SpawnOptions} [options]
 */
export function startProcess(command, args, options = {}) {
  hookExit();
  const child = spawn(command, args, { cwd: root, ...options });
  running.add(child);
  child.once('close', () => running.delete(child));
  child.once('error', () => running.delete(child));
  return child;
}

/**
 * Asks a process of ours to end, by its own id, and waits until it has; after `patience` ms it is made to.
 * @param {import('node:child_process').ChildProcess} child
 * @param {number} [patience]
 * @returns {Promise<void>}
 */
export async function stopProcess(child, patience = 5000) {
  if (child.exitCode !== null || child.signalCode !== null || child.pid === undefined) return;
  const ended = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  const timer = setTimeout(() => child.kill('SIGKILL'), patience);
  await ended;
  clearTimeout(timer);
}

/**
 * Runs a command to its end. What it prints is passed on (unless `quiet`) and returned.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv, quiet?: boolean, shell?: boolean }} [options] `shell`: the command is a
 *   command file on Windows, which only a shell can start
 * @returns {Promise<{ code: number, output: string }>} `code` is 127 when the command cannot be started
 */
export function run(command, args, { cwd = root, env = process.env, quiet = false, shell = false } = {}) {
  return new Promise((resolve) => {
    let output = '';
    const child = startProcess(command, args, { cwd, env, shell });
    const take = (/** @type {NodeJS.WriteStream} */ stream) => (/** @type {Buffer} */ data) => {
      output += data.toString();
      if (!quiet) stream.write(data);
    };
    child.stdout?.on('data', take(process.stdout));
    child.stderr?.on('data', take(process.stderr));
    child.once('error', (error) => resolve({ code: 127, output: `${output}${error.message}\n` }));
    child.once('close', (code) => resolve({ code: code ?? 1, output }));
  });
}

/**
 * Runs npm to its end.
 * @param {readonly string[]} args
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv, quiet?: boolean }} [options]
 */
export function runNpm(args, options = {}) {
  return run('npm', args, { ...options, shell: process.platform === 'win32' });
}

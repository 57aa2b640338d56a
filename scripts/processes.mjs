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
    for (const child of running) signalProcess(child, 'SIGTERM');
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

/** Processes that were started as the head of a group of their own. @type {WeakSet<import('node:child_process').ChildProcess>} */
const heads = new WeakSet();

/**
 * Sends a signal to a process of ours, by its own id; to the head of a group, and to all that it has started.
 * @param {import('node:child_process').ChildProcess} child
 * @param {NodeJS.Signals} signal
 */
function signalProcess(child, signal) {
  if (child.pid === undefined) return;
  try {
    process.kill(heads.has(child) ? -child.pid : child.pid, signal);
  } catch {
    // It has ended in the meantime.
  }
}

/**
 * Starts a process that ends with this one at the latest.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {import('node:child_process').SpawnOptions & { group?: boolean }} [options] `group`: it starts others, which do
 *   not always end with it, so they are to be ended together
 */
export function startProcess(command, args, { group = false, ...options } = {}) {
  hookExit();
  const headsGroup = group && process.platform !== 'win32';
  const child = spawn(command, args, { cwd: root, detached: headsGroup, ...options });
  if (headsGroup) heads.add(child);
  running.add(child);
  child.once('close', () => running.delete(child));
  child.once('error', () => running.delete(child));
  return child;
}

/**
 * Asks a process of ours to end and waits until it has; after `patience` ms it is made to. What is left of its group
 * then ends too.
 * @param {import('node:child_process').ChildProcess} child
 * @param {number} [patience]
 * @returns {Promise<void>}
 */
export async function stopProcess(child, patience = 5000) {
  if (child.exitCode === null && child.signalCode === null && child.pid !== undefined) {
    const ended = new Promise((resolve) => child.once('exit', resolve));
    signalProcess(child, 'SIGTERM');
    const timer = setTimeout(() => signalProcess(child, 'SIGKILL'), patience);
    await ended;
    clearTimeout(timer);
  }
  if (heads.has(child)) signalProcess(child, 'SIGKILL');
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

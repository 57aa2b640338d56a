// `npm start`: opens a journal in a real editor with the extension loaded.
import { existsSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { install } from './install.mjs';
import { root, run, startProcess } from './processes.mjs';

const help = `npm start -- [options]

Opens a copy of the sample journal, its dates moved so that it ends this week, in a real editor with the
extension loaded. What you write is saved in the copy.

  --folder PATH     open your own folder instead, as it is
  --sample NAME     athlete (one athlete, as when nothing is said) or coach (a folder with three athletes)
  --editor NAME     server (in your browser, as when nothing is said) or desktop (the VS Code on this machine,
                    its command "code"); TRAINING_JOURNAL_EDITOR=desktop says the same
  --port NUMBER     the server's port; a free one when nothing is said
  --no-open         do not open the browser; only print the address
  --help            this text

The server listens on this machine only and runs until Ctrl+C.`;

/** A word on the command line is wrong; the message is for people. */
class UsageError extends Error {
  /** @override */
  name = 'UsageError';
}

/** @param {readonly string[]} args */
function parseOptions(args) {
  try {
    return parseArgs({
      args: [...args],
      options: {
        folder: { type: 'string' },
        sample: { type: 'string', default: 'athlete' },
        editor: { type: 'string', default: process.env.TRAINING_JOURNAL_EDITOR ?? 'server' },
        port: { type: 'string', default: '0' },
        'no-open': { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    }).values;
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

/**
 * @template {string} Name
 * @param {string} what
 * @param {string} name
 * @param {readonly Name[]} known
 * @returns {Name}
 */
function oneOf(what, name, known) {
  const found = known.find((one) => one === name);
  if (!found) throw new UsageError(`There is no ${what} "${name}": say ${known.join(' or ')}.`);
  return found;
}

/** @param {readonly string[]} args */
function readOptions(args) {
  const values = parseOptions(args);
  const sample = oneOf('sample', values.sample, ['athlete', 'coach']);
  const editor = oneOf('editor', values.editor, ['server', 'desktop']);
  const port = Number(values.port);
  if (!/^\d+$/.test(values.port) || port > 65_535) throw new UsageError(`"${values.port}" is not a port.`);
  const folder =
    values.folder === undefined ? undefined : resolve(process.env.INIT_CWD ?? '.', values.folder);
  if (folder !== undefined && !(existsSync(folder) && statSync(folder).isDirectory())) {
    throw new UsageError(`There is no folder ${folder}.`);
  }
  return { sample, editor, port, folder, open: !values['no-open'], help: values.help };
}

/**
 * Opens the address in the person's browser, if there is one to be seen; it does not matter if that fails.
 * @param {string} address
 */
function openBrowser(address) {
  if (process.env.CI) return;
  /** @type {[string, string[]]} */
  const [command, args] =
    process.platform === 'darwin'
      ? ['open', [address]]
      : process.platform === 'win32'
        ? ['cmd', ['/c', 'start', '""', address.replaceAll('&', '^&')]]
        : ['xdg-open', [address]];
  if (command === 'xdg-open' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) return;
  startProcess(command, args, { stdio: 'ignore' }).on('error', () => undefined);
}

/** @param {string} folder */
async function openDesktop(folder) {
  const { code } = await run('code', ['--new-window', `--extensionDevelopmentPath=${root}`, folder], {
    shell: process.platform === 'win32',
  });
  if (code === 127) {
    throw new UsageError(
      'The command "code" was not found. Install VS Code with its shell command, or start without --editor desktop.',
    );
  }
  if (code !== 0) throw new UsageError(`The command "code" ended with ${code}.`);
  console.log(`Opened ${folder} in VS Code.`);
}

/**
 * @param {string} folder
 * @param {{ port: number, open: boolean }} options
 */
async function openServer(folder, { port, open }) {
  const { startEditorServer, workbenchAddress } = await import('./editor-server.mjs');
  const server = await startEditorServer({ port });
  const address = workbenchAddress(server, { folder, extension: root });
  console.log(
    `\nThe journal:  ${folder}\nThe editor:   ${address}\n\nOpen the address in a browser. Ctrl+C ends it.`,
  );
  if (open) openBrowser(address);
  await server.ended;
  throw new Error(`The editor server ended by itself. It said:\n${server.output().trim()}`);
}

/** @param {readonly string[]} args */
async function main(args) {
  const options = readOptions(args);
  if (options.help) {
    console.log(help);
    return;
  }
  await install();
  console.log('Building ...');
  const { build } = await import('./build.mjs');
  await build();
  const { localDate, scratchJournal } = await import('./scratch-journal.mjs');
  const folder = options.folder ?? scratchJournal(options.sample, localDate(new Date()));
  if (options.editor === 'desktop') await openDesktop(folder);
  else await openServer(folder, options);
}

try {
  await main(process.argv.slice(2));
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = error instanceof UsageError ? 2 : 1;
}

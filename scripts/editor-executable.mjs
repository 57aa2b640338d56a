#!/usr/bin/env node
// Stands where a test runner expects the editor's own program: takes the same arguments, hosts the run in the editor
// server and headless Chromium, passes on what the tests print, and exits as they did.
import { launchBrowser } from './browser.mjs';
import { startEditorServer, workbenchAddress } from './editor-server.mjs';

/** What the editor says of itself, not of the tests: how it connects, and native modules that it does without. */
const chatter = new RegExp(
  [
    'connection token|Creating a socket|builtin extensions|ChatSessionStore|workbench contribution',
    'Service Worker\\] registration|bindings file|native-watchdog|No search provider registered',
  ].join('|'),
);

/** Nothing heard from a run for so long means that it hangs. */
const silenceMs = 180_000;

/**
 * @param {readonly string[]} args
 * @returns {{ folder: string | undefined, value: (name: string) => string | undefined }}
 */
function readArguments(args) {
  return {
    folder: args.find((argument) => !argument.startsWith('-')),
    value: (name) => args.find((argument) => argument.startsWith(`--${name}=`))?.slice(name.length + 3),
  };
}

/**
 * Opens the page that runs the tests, prints what they print, and waits for how they end.
 * @param {import('playwright-core').Page} page
 * @param {string} address
 * @returns {Promise<number>} the exit code
 */
async function followRun(page, address) {
  /** @type {(code: number) => void} */
  let end = () => undefined;
  /** @type {Promise<number>} */
  const ended = new Promise((resolve) => {
    end = resolve;
  });
  const giveUp = (/** @type {string} */ reason) => {
    console.error(reason);
    end(1);
  };
  const silence = setTimeout(() => giveUp('The run has said nothing for three minutes.'), silenceMs);
  await page.exposeFunction(
    'codeAutomationLog',
    (/** @type {string} */ type, /** @type {unknown[]} */ parts) => {
      silence.refresh();
      const text = parts.map((part) => (typeof part === 'string' ? part : JSON.stringify(part))).join(' ');
      if (!chatter.test(text)) console.log(type === 'error' ? `[error] ${text}` : text);
    },
  );
  await page.exposeFunction('codeAutomationExit', (/** @type {number} */ code) => end(code));
  page.once('crash', () => giveUp('The page of the editor crashed.'));
  const closed = () => giveUp('The page of the editor was closed.');
  page.once('close', closed);
  await page.goto(address);
  const code = await ended;
  clearTimeout(silence);
  page.off('close', closed);
  return code;
}

/**
 * @param {readonly string[]} args
 * @returns {Promise<number>} the exit code
 */
async function main(args) {
  const { folder, value } = readArguments(args);
  const extension = value('extensionDevelopmentPath');
  const tests = value('extensionTestsPath');
  if (!folder || !extension || !tests) {
    console.error('Give --extensionDevelopmentPath=PATH --extensionTestsPath=PATH and a folder.');
    return 2;
  }
  const server = await startEditorServer();
  try {
    const browser = await launchBrowser();
    try {
      return await followRun(await browser.newPage(), workbenchAddress(server, { folder, extension, tests }));
    } finally {
      await browser.close();
    }
  } finally {
    await server.stop();
  }
}

process.exitCode = await main(process.argv.slice(2));

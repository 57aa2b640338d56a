// A live editor that a program can drive as a person would: the workbench in headless Chromium, with the extension
// loaded and real files on disk. Used by the tests of a person's path and by the screenshots.
import { mkdirSync } from 'node:fs';
import { basename, dirname, isAbsolute, join } from 'node:path';
import { launchBrowser } from './browser.mjs';
import { startEditorServer, workbenchAddress } from './editor-server.mjs';
import { root } from './processes.mjs';

/** @typedef {import('playwright-core').Page} Page */
/** @typedef {import('playwright-core').Frame} Frame */

/** The editor's own themes, by what they are for. */
export const themes = /** @type {const} */ ({
  light: 'Default Light Modern',
  dark: 'Default Dark Modern',
  'high-contrast': 'Default High Contrast',
  'high-contrast-light': 'Default High Contrast Light',
});

/** The class that the workbench has while it shows a theme, the base first. */
const themeClasses = /** @type {const} */ ({
  light: '.vs.vscode-theme-defaults-themes-light_modern-json',
  dark: '.vs-dark.vscode-theme-defaults-themes-dark_modern-json',
  'high-contrast': '.hc-black.vscode-theme-defaults-themes-hc_black-json',
  'high-contrast-light': '.hc-light.vscode-theme-defaults-themes-hc_light-json',
});

/**
 * @typedef {object} LiveEditorOptions
 * @property {string} folder the folder to open, an absolute path; it is written to
 * @property {keyof typeof themes} [theme] `light` when absent
 * @property {number} [width] of the window, in CSS pixels; 1280 when absent
 * @property {number} [height] 800 when absent
 * @property {string} [extension] folder of the extension; the project when absent
 * @property {Readonly<Record<string, unknown>>} [settings] user settings of this run
 */

/**
 * Opens a live editor and waits until its workbench stands.
 * @param {LiveEditorOptions} options
 * @returns {Promise<LiveEditor>}
 */
export async function openLiveEditor({
  folder,
  theme = 'light',
  width = 1280,
  height = 800,
  extension = root,
  settings = {},
}) {
  const server = await startEditorServer({
    settings: { 'workbench.colorTheme': themes[theme], 'window.autoDetectHighContrast': false, ...settings },
  });
  /** @type {import('playwright-core').Browser | undefined} */
  let browser;
  try {
    browser = await launchBrowser();
    const context = await browser.newContext({
      viewport: { width, height },
      permissions: ['clipboard-read', 'clipboard-write'],
      colorScheme: theme === 'dark' || theme === 'high-contrast' ? 'dark' : 'light',
    });
    const page = await context.newPage();
    const editor = new LiveEditor(page, folder, server);
    context.on('request', (request) => {
      if (isOutside(request.url())) editor.outsideRequests.push(request.url());
    });
    context.on('response', (response) => {
      if (isOwnFile(response.url()) && !response.fromServiceWorker())
        editor.outsideRequests.push(response.url());
    });
    page.on('console', (message) => editor.consoleLines.push(`${message.type()}: ${message.text()}`));
    page.setDefaultTimeout(60_000);
    await page.goto(workbenchAddress(server, { folder, extension }));
    await page.locator('.explorer-folders-view .monaco-list, .welcome-view').first().waitFor();
    // Nothing is looked at in another theme than the one that was asked for.
    await page.locator(`.monaco-workbench${themeClasses[theme]}`).waitFor();
    return editor;
  } catch (error) {
    await browser?.close();
    await server.stop();
    throw error;
  }
}

/**
 * Pages that extensions show ask for their files under a name that stands for this machine: a worker of the editor
 * answers, and nothing goes out.
 * @param {string} address
 */
function isOwnFile(address) {
  return new URL(address).hostname.endsWith('.vscode-resource.vscode-cdn.net');
}

/** @param {string} address */
function isOutside(address) {
  const { protocol, hostname } = new URL(address);
  return /^(?:http|ws)s?:$/.test(protocol) && hostname !== '127.0.0.1' && !isOwnFile(address);
}

/** A running editor: what a person does in it, and what they see. */
export class LiveEditor {
  /** Everything that the page has printed to its console, oldest first. @type {string[]} */
  consoleLines = [];

  /** Addresses outside this machine that the page has asked for: there may be none. @type {string[]} */
  outsideRequests = [];

  /**
   * @param {Page} page
   * @param {string} folder
   * @param {import('./editor-server.mjs').EditorServer} server
   */
  constructor(page, folder, server) {
    this.page = page;
    this.folder = folder;
    this.server = server;
  }

  /** Closes the browser and the server, and removes their scratch folders. The opened folder is left alone. */
  async close() {
    await this.page.context().browser()?.close();
    await this.server.stop();
  }

  /** Loads the editor anew, as it was left. */
  async reload() {
    // The editor writes down what is open when it hears that its page is about to go. A browser that loads anew at
    // once can be quicker than that, and a person would find what was open a minute before.
    await this.page.evaluate(() => window.dispatchEvent(new Event('beforeunload')));
    await this.page.waitForTimeout(1500);
    await this.page.reload();
  }

  /**
   * Runs a command from the palette, by its title as a person reads it (with its category, if it has one).
   * @param {string} title
   */
  async runCommand(title) {
    await this.#pick('F1', `>${title}`, title);
  }

  /**
   * Opens a file of the folder through the quick file list, and waits until its editor has the focus.
   * @param {string} path relative to the opened folder, with slashes
   */
  async openFile(path) {
    await this.#pick('Control+p', path, basename(path));
    await this.page.locator(`.tab.active[data-resource-name="${basename(path)}"]`).waitFor();
    await this.page.locator('.editor-group-container.active .monaco-editor.focused').waitFor();
  }

  /**
   * Puts the cursor of the active text editor at a place.
   * @param {number} line from 1
   * @param {number} [column] from 1
   */
  async goTo(line, column = 1) {
    await this.page.keyboard.press('Control+g');
    await this.page.locator('.quick-input-widget input').fill(`:${line}:${column}`);
    await this.page.keyboard.press('Enter');
    await this.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
  }

  /**
   * Types key by key, as a person does: completion and auto-closing act.
   * @param {string} text
   */
  async type(text) {
    await this.page.keyboard.type(text, { delay: 5 });
  }

  /**
   * Puts text in at the cursor all at once, as pasting does.
   * @param {string} text
   */
  async insert(text) {
    await this.page.keyboard.insertText(text);
  }

  /** @param {string} keys a key or a combination, `Control+z` */
  async press(keys) {
    await this.page.keyboard.press(keys);
  }

  /** Saves the active editor and waits until it is no longer marked as unsaved. */
  async save() {
    await this.page.keyboard.press('Control+s');
    await this.page.locator('.tab.active.dirty').waitFor({ state: 'detached' });
  }

  /**
   * The texts in the list of problems, in its order. Opens the list.
   * @returns {Promise<string[]>} one text a problem: message, source, code and place, as the row says them
   */
  async problems() {
    await this.#showProblems();
    return this.page.locator('.markers-panel .monaco-list-row .marker-message-line').allInnerTexts();
  }

  /**
   * Waits until the list of problems holds a row with this text, and returns the row's text.
   * @param {string | RegExp} text
   */
  async waitForProblem(text) {
    await this.#showProblems();
    const row = this.page.locator('.markers-panel .monaco-list-row', { hasText: text }).first();
    await row.waitFor();
    return wholeText(row);
  }

  /**
   * Waits until no row of the list of problems has this text.
   * @param {string | RegExp} text
   */
  async waitForNoProblem(text) {
    await this.#showProblems();
    await this.page
      .locator('.markers-panel .monaco-list-row', { hasText: text })
      .first()
      .waitFor({ state: 'detached' });
  }

  /**
   * Waits for a wavy line in the active text editor.
   * @param {'error' | 'warning' | 'info' | 'hint'} severity
   */
  async waitForSquiggle(severity) {
    await this.page.locator(`.editor-group-container.active .squiggly-${severity}`).first().waitFor();
  }

  /** What the hover at the cursor says. @returns {Promise<string>} */
  async hoverText() {
    return this.#inHover(() => {
      const shown = [...document.querySelectorAll('.monaco-hover:not(.hidden) .hover-contents')];
      return shown.map(({ textContent }) => textContent ?? '').join('\n');
    }, '');
  }

  /**
   * Follows a link in the hover at the cursor.
   * @param {string} text of the link
   */
  async followHoverLink(text) {
    // In one step with looking whether it is shown: the link of a hover that has closed meanwhile leads the browser
    // away from the editor. The mouse would close a hover that the keyboard has opened.
    await this.#inHover((wanted) => {
      const links = [...document.querySelectorAll('.monaco-hover:not(.hidden) a')];
      const link = links.find((element) => element.textContent?.includes(wanted));
      /** @type {HTMLElement | undefined} */ (link)?.click();
      return link !== undefined;
    }, text);
  }

  /**
   * Opens the hover at the cursor and asks the page about it until there is an answer. It opens before it has words, and
   * an editor that is still starting closes it again: a person then asks once more.
   * @template Answer
   * @param {(text: string) => Answer} ask runs in the page; what is empty or `false` is no answer yet
   * @param {string} text handed to it
   * @returns {Promise<Answer>}
   */
  async #inHover(ask, text) {
    const shown = this.page.locator('.monaco-hover:not(.hidden) .hover-contents', { hasText: /\S/ }).first();
    for (let attempt = 1; attempt <= 6; attempt += 1) {
      if (!(await shown.isVisible())) {
        await this.page.keyboard.press('Control+k');
        await this.page.keyboard.press('Control+i');
      }
      try {
        await shown.waitFor({ timeout: attempt * 3_000 });
      } catch {
        continue;
      }
      const answer = await this.page.evaluate(ask, text);
      if (answer) return answer;
    }
    throw new Error(`The hover at the cursor did not stay, or has no link ${text}.`);
  }

  /**
   * Opens the quick fixes at the cursor and returns their titles; the list stays open.
   * @returns {Promise<string[]>}
   */
  async quickFixes() {
    const rows = this.page.locator('.action-widget .monaco-list-row.action');
    const none = this.page.locator('.monaco-editor-overlaymessage', { hasText: 'No code actions' });
    // An editor that is still starting answers that there are none; a person asks again.
    for (let tries = 0; tries < 5 && !(await rows.first().isVisible()); tries += 1) {
      await this.page.keyboard.press('Control+.');
      await rows.first().or(none.first()).first().waitFor();
      if (await rows.first().isVisible()) break;
      await this.page.keyboard.press('Escape');
      await this.page.waitForTimeout(1000);
    }
    await rows.first().waitFor();
    return (await rows.allInnerTexts()).map((text) => text.trim());
  }

  /**
   * Opens the quick fixes at the cursor and takes the first that has this title.
   * @param {string | RegExp} title
   */
  async applyQuickFix(title) {
    const titles = await this.quickFixes();
    const wanted = titles.findIndex((text) =>
      typeof title === 'string' ? text.includes(title) : title.test(text),
    );
    if (wanted < 0) throw new Error(`No quick fix says ${title}; there are: ${titles.join('; ')}`);
    // The first one has the focus. The mouse is not used, since the list lies under a layer that takes clicks.
    for (let step = 0; step < wanted; step += 1) await this.press('ArrowDown');
    await this.press('Enter');
    await this.page.locator('.action-widget').waitFor({ state: 'hidden' });
  }

  /**
   * Opens the suggestions at the cursor, if typing has not, and returns their labels.
   * @returns {Promise<string[]>}
   */
  async suggestions() {
    const widget = this.page.locator('.suggest-widget.visible');
    if (!(await widget.isVisible())) await this.press('Control+Space');
    const rows = this.page.locator('.suggest-widget.visible .monaco-list-row');
    await rows.first().waitFor();
    return (await rows.locator('.label-name').allInnerTexts()).map((text) => text.trim());
  }

  /** The lines of the active text editor that are on the screen, top to bottom. @returns {Promise<string[]>} */
  async visibleLines() {
    const lines = await this.page
      .locator('.editor-group-container.active .view-line')
      .evaluateAll((elements) =>
        elements
          .map((element) => ({
            top: Number.parseFloat(/** @type {HTMLElement} */ (element).style.top),
            text: element.textContent ?? '',
          }))
          .sort((left, right) => left.top - right.top)
          .map(({ text }) => text.replaceAll('\u00a0', ' ')),
      );
    return lines;
  }

  /**
   * Answers an open list of choices: types the text, then takes the row of this label.
   * @param {string} label
   */
  async choose(label) {
    await this.#take(label, label, 60_000);
  }

  /**
   * Answers an open text question.
   * @param {string} text
   */
  async answer(text) {
    const input = this.page.locator('.quick-input-widget input[type="text"]');
    await input.waitFor();
    await input.fill(text);
    await this.page.keyboard.press('Enter');
    await this.#waitUntilAnswered(text);
  }

  /**
   * Presses a button of an open modal question.
   * @param {string} label
   */
  async pressDialogButton(label) {
    await this.page.locator('.monaco-dialog-box .monaco-button', { hasText: label }).first().click();
    await this.page.locator('.monaco-dialog-box').waitFor({ state: 'detached' });
  }

  /** The text of the open modal question. @returns {Promise<string>} */
  async dialogText() {
    const dialog = this.page.locator('.monaco-dialog-box');
    await dialog.waitFor();
    return wholeText(dialog);
  }

  /**
   * Waits for a notice with this text and returns the whole text.
   * @param {string | RegExp} text
   */
  async waitForNotice(text) {
    const notice = this.page.locator('.notification-list-item-message', { hasText: text }).first();
    await notice.waitFor();
    return wholeText(notice);
  }

  /** The texts of the status bar. @returns {Promise<string[]>} */
  async statusBar() {
    const items = await this.page.locator('.statusbar-item').allInnerTexts();
    return items.map((text) => text.trim()).filter((text) => text !== '');
  }

  /**
   * Waits until the status bar has an item with this text, and returns the item's text.
   * @param {string | RegExp} text
   */
  async waitForStatus(text) {
    const item = this.page.locator('.statusbar-item', { hasText: text }).first();
    await item.waitFor();
    return wholeText(item);
  }

  /**
   * Opens a view container by its title in the activity bar and returns when it stands.
   * @param {string} title
   */
  async openViewContainer(title) {
    const tab = this.page.locator(`.activitybar .action-item:has(a[aria-label^="${title}"])`).first();
    await tab.waitFor();
    if (!(await tab.evaluate((element) => element.classList.contains('checked')))) await tab.click();
    await this.page.locator('.sidebar .composite.title', { hasText: new RegExp(title, 'i') }).waitFor();
    // Away from the icon, so that its name does not stay on the screen.
    await this.page.mouse.move(2, 2);
  }

  /**
   * A row of a tree in the side bar.
   * @param {string | RegExp} text
   */
  treeRow(text) {
    return this.page.locator('.sidebar .monaco-list-row', { hasText: text }).first();
  }

  /**
   * The frame of the page that an extension shows, in front of the others.
   * @returns {Promise<Frame>} the inner frame: the document that the extension wrote
   */
  async webviewFrame() {
    const outer = this.page.locator('iframe.webview.ready:visible').last();
    await outer.waitFor();
    const outerFrame = await (await outer.elementHandle())?.contentFrame();
    if (!outerFrame) throw new Error('The page of the extension has no frame.');
    const inner = await outerFrame.waitForSelector('iframe#active-frame');
    const frame = await inner.contentFrame();
    if (!frame) throw new Error('The page of the extension has no inner frame.');
    await frame.waitForLoadState('domcontentloaded');
    return frame;
  }

  /**
   * Writes what is on the screen to a PNG file.
   * @param {string} name a name, for `out/screenshots/NAME.png`, or an absolute path
   * @returns {Promise<string>} the path of the file
   */
  async screenshot(name) {
    const file = isAbsolute(name) ? name : join(root, 'out', 'screenshots', `${name}.png`);
    mkdirSync(dirname(file), { recursive: true });
    await this.page.screenshot({ path: file });
    return file;
  }

  async #showProblems() {
    const panel = this.page.locator('.markers-panel');
    if (await panel.isVisible()) return;
    await this.runCommand('Problems: Focus on Problems View');
    await panel.waitFor();
  }

  /**
   * Opens a list with a key, types into it, and takes a row. The list closes when something else takes the focus
   * meanwhile, such as a page that has just been opened: a person then opens it again.
   * @param {string} key opens the list
   * @param {string} text what is typed into it
   * @param {string} label the label of the row that is taken
   */
  async #pick(key, text, label) {
    for (let attempt = 1; ; attempt += 1) {
      await this.page.keyboard.press(key);
      try {
        await this.#take(text, label, attempt * 5_000);
        return;
      } catch (error) {
        if (attempt === 3) throw error;
        await this.page.keyboard.press('Escape');
      }
    }
  }

  /**
   * Types into the open list and takes the row of a label.
   * @param {string} text
   * @param {string} label
   * @param {number} timeout in milliseconds, for each of the two
   */
  async #take(text, label, timeout) {
    await this.page.locator('.quick-input-widget input[type="text"]').fill(text, { timeout });
    const labels = this.page.locator('.quick-input-list-label .label-name', { hasText: exactly(label) });
    const rows = this.page.locator('.quick-input-list .monaco-list-row').filter({ has: labels });
    await rows.first().click({ timeout });
    await this.#waitUntilAnswered(text);
  }

  /**
   * Waits until the question that was answered with a text is gone: one that is still closing would take what is typed
   * next, or hand it to the note behind it.
   * @param {string} text
   */
  async #waitUntilAnswered(text) {
    await this.page.waitForFunction((answered) => {
      const field = document.querySelector('.quick-input-widget input[type="text"]');
      return !(field instanceof HTMLInputElement && field.checkVisibility() && field.value === answered);
    }, text);
  }
}

/** @param {string} text */
function exactly(text) {
  return new RegExp(`^\\s*${text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')}\\s*$`);
}

/** @param {import('playwright-core').Locator} locator */
async function wholeText(locator) {
  return (await locator.allInnerTexts()).join('\n');
}

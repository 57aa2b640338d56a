import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import esbuild from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { bundles } from '../../../scripts/build.mjs';
import { pageHtml } from '../../../src/editor/page/page-html';
import type { FromGoalPage, GoalPageState, ToGoalPage } from '../../../src/pages/goal-page-data';
import type { FromLoadPage, LoadPageState, ToLoadPage } from '../../../src/pages/load-page-data';
import type { FromMonthPage, MonthPageState, ToMonthPage } from '../../../src/pages/month-page-data';
import type { FromRosterPage, RosterPageState, ToRosterPage } from '../../../src/pages/roster-page-data';
import { type ThemeName, themes } from './themes';

const address = 'https://page.example';

type FromPage = FromGoalPage | FromLoadPage | FromMonthPage | FromRosterPage;

/** What the editor tells a page. */
export type ToPage = ToGoalPage | ToLoadPage | ToMonthPage | ToRosterPage;

/** What a page keeps over a reload. */
export type PageState = GoalPageState | LoadPageState | MonthPageState | RosterPageState;

/** What the page keeps of the editor while a test looks at it. */
interface EditorInPage {
  readonly messages: FromPage[];
  readonly refused: string[];
  state: PageState | undefined;
}

declare global {
  interface Window {
    editorInPage: EditorInPage;
  }
}

/** A page's script, bundled as it ships. */
export async function bundlePage(
  name: 'goal-page' | 'load-page' | 'month-page' | 'roster-page' = 'goal-page',
): Promise<string> {
  const options = bundles().find((one) => name in (one.entryPoints as Record<string, string>));
  if (!options) throw new Error(`${name} is not among the bundles.`);
  const built = await esbuild.build({ ...options, write: false, sourcemap: false });
  const script = built.outputFiles?.find((file) => file.path.endsWith(`${name}.js`));
  if (!script) throw new Error(`${name} was not bundled.`);
  return script.text;
}

/** A page in a browser, with a stand-in for the editor around it, under the policy that it ships with. */
export class PageInBrowser {
  readonly page: Page;
  readonly outsideRequests: string[] = [];
  readonly errors: string[] = [];

  private constructor(page: Page) {
    this.page = page;
  }

  static async open(
    browser: Browser,
    script: string,
    look: { readonly theme: ThemeName; readonly width?: number; readonly state?: PageState },
  ): Promise<PageInBrowser> {
    const page = await browser.newPage({ viewport: { width: look.width ?? 900, height: 1000 } });
    const open = new PageInBrowser(page);
    const files: Readonly<Record<string, { readonly contentType: string; readonly body: string }>> = {
      [`${address}/`]: {
        contentType: 'text/html',
        body: pageHtml({
          script: `${address}/goal-page.js`,
          style: `${address}/pages.css`,
          styleSource: address,
          nonce: 'c0ffee',
          language: 'en',
          title: 'Goals',
        }),
      },
      [`${address}/goal-page.js`]: { contentType: 'text/javascript', body: script },
      [`${address}/pages.css`]: {
        contentType: 'text/css',
        body: readFileSync(join(process.cwd(), 'media/pages/pages.css'), 'utf8'),
      },
    };
    await page.route('**/*', async (route) => {
      const file = files[route.request().url()];
      if (file) await route.fulfill(file);
      else {
        open.outsideRequests.push(route.request().url());
        await route.abort();
      }
    });
    page.on('pageerror', (error) => open.errors.push(String(error)));
    await page.addInitScript((state) => {
      const editor: EditorInPage = { messages: [], refused: [], state };
      window.editorInPage = editor;
      document.addEventListener('securitypolicyviolation', (event) =>
        editor.refused.push(`${event.violatedDirective} ${event.blockedURI}`),
      );
      Object.assign(window, {
        acquireVsCodeApi: () => ({
          postMessage: (message: FromPage) => editor.messages.push(message),
          getState: () => editor.state,
          setState: (kept: PageState) => {
            editor.state = kept;
          },
        }),
      });
    }, look.state);
    await page.goto(`${address}/`);
    await open.useTheme(look.theme);
    return open;
  }

  /** Puts a theme on the page as the editor does: variables on the root, a class on the body. */
  async useTheme(name: ThemeName): Promise<void> {
    await this.page.evaluate(
      ({ class: className, variables }) => {
        document.documentElement.removeAttribute('style');
        for (const [variable, value] of Object.entries(variables)) {
          document.documentElement.style.setProperty(variable, value);
        }
        document.body.className = className;
      },
      themes[name] as { class: string; variables: Record<string, string> },
    );
    await this.drawn();
  }

  /** What the editor would tell the page. */
  async send(message: ToPage): Promise<void> {
    await this.page.evaluate((told) => window.postMessage(told, '*'), message);
    await this.drawn();
  }

  /** Waits until what was told is drawn. */
  async drawn(): Promise<void> {
    await this.page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(() => resolve())), 0);
        }),
    );
  }

  /** What the page asked the editor for. */
  async messages(): Promise<readonly FromPage[]> {
    return this.page.evaluate(() => window.editorInPage.messages);
  }

  /** Waits until the page asks for something of the kind. */
  async asked(type: FromPage['type']): Promise<FromPage> {
    const asked = await this.page.waitForFunction(
      (wanted) => window.editorInPage.messages.find((message) => message.type === wanted),
      type,
      { timeout: 10_000 },
    );
    return (await asked.jsonValue()) as FromPage;
  }

  async state<State extends PageState = GoalPageState>(): Promise<State | undefined> {
    return this.page.evaluate(() => window.editorInPage.state) as Promise<State | undefined>;
  }

  /** What the page's policy refused. */
  async refused(): Promise<readonly string[]> {
    return this.page.evaluate(() => window.editorInPage.refused);
  }

  /** Everything that can be read on the page. */
  async text(): Promise<string> {
    return (await this.page.textContent('main')) ?? '';
  }

  async close(): Promise<void> {
    await this.page.close();
  }
}

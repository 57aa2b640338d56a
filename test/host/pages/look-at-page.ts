import assert from 'node:assert/strict';
import type { Browser } from 'playwright-core';
import { PageInBrowser, type PageState, type ToPage } from './page-in-browser';
import type { ThemeName } from './themes';

/** How a page is looked at; light when no theme is named. */
export interface Look<State extends PageState> {
  readonly theme?: ThemeName;
  readonly width?: number;
  readonly state?: State;
}

/**
 * Opens a page, tells it something, and lets a test look at it. Whatever the test looks for, the page may have no error,
 * ask for nothing that its policy refuses, and ask for nothing outside.
 */
export async function lookAtPage<State extends PageState>(
  { browser, script }: { readonly browser: Browser; readonly script: string },
  look: Look<State>,
  told: ToPage,
  check: (open: PageInBrowser) => Promise<void>,
): Promise<void> {
  const open = await PageInBrowser.open(browser, script, { theme: 'light', ...look });
  try {
    await open.send(told);
    await check(open);
    assert.deepEqual(await open.refused(), [], 'nothing that its policy refuses');
    assert.deepEqual(open.errors, []);
    assert.deepEqual(open.outsideRequests, []);
  } finally {
    await open.close();
  }
}

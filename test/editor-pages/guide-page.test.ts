import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, it } from 'mocha';
import { guidePageName } from '../../src/editor/guide-page';
import { findingCodes } from '../../src/training/finding';

describe('a page of the guide', () => {
  it('is there, and is opened, for every code that a finding can have', () => {
    for (const code of findingCodes) {
      const page = `findings/${code}.md`;
      assert.equal(guidePageName(page), page);
      assert.ok(existsSync(join(process.cwd(), 'media', 'guide', page)), page);
    }
  });

  it('is the first one for what names none', () => {
    for (const page of [
      undefined,
      1,
      '',
      '../package.json',
      'findings/../../x.md',
      '/etc/x.md',
      'a/b.md',
      'x.md#y',
    ])
      assert.equal(guidePageName(page), 'README.md');
  });
});

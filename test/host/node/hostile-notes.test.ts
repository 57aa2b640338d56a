import assert from 'node:assert/strict';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import * as vscode from 'vscode';
import { hostileWords } from '../../hostile/hostile-notes';
import { eventually, type ScratchJournal, scratchJournal, workspaceRoot } from '../scratch-journal';

const all = Object.values(hostileWords);
const quoted = (words: string) => `"${words.replaceAll('"', '')}"`;

const goals = all.flatMap((words, index) => [
  `- #goal goal-${index} by:2026-06-14 ${quoted(words)} -- ${words}`,
  `- #why ${words}`,
  '- #metric gap from:14cm to:0cm',
  '- #need flexibility 1/week',
]);
const routines = all.flatMap((words, index) => [
  `- #routine routine-${index} flexibility 30min -- ${words}`,
  `  - ${words}`,
]);
const sessions = all.flatMap((words, index) => [
  `- [x] #session flexibility 30min 5/10 for:goal-${index} routine:routine-${index} with:${quoted(words)} -- ${words}`,
  `- #measure goal-${index} gap ${index + 1}cm photo:${quoted(words)} -- ${words}`,
]);
const day = ['# Tuesday', '', ...sessions, ''].join('\n');

interface Part {
  readonly type: string;
  readonly url?: string;
  readonly children?: readonly Part[];
}

function* partsOf(part: Part): Generator<Part> {
  yield part;
  for (const child of part.children ?? []) yield* partsOf(child);
}

/** What of a text in Markdown is more than words, lists and code, beside addresses that are written out. */
function livePartsOf(markdown: string): readonly string[] {
  const plain = new Set(['root', 'paragraph', 'text', 'strong', 'list', 'listItem', 'code', 'thematicBreak']);
  const table = ['table', 'tableRow', 'tableCell'];
  const parts = [...partsOf(unified().use(remarkParse).use(remarkGfm).parse(markdown) as Part)];
  return parts
    .filter(({ type, url }) => !plain.has(type) && !table.includes(type) && !/^https?:/.test(url ?? ''))
    .map(({ type, url }) => `${type} ${url ?? ''}`);
}

describe('a journal full of words that try to make the editor do something', () => {
  let journal: ScratchJournal;
  let ran = 0;
  let bait: vscode.Disposable;
  const outside = vscode.Uri.joinPath(workspaceRoot(), '..', 'hostile.md');

  before(async () => {
    bait = vscode.commands.registerCommand('hostile.run', () => {
      ran += 1;
    });
    await vscode.workspace.fs.writeFile(outside, new TextEncoder().encode('Not yours.\n'));
    journal = await scratchJournal('hostile', {
      'journal.md': '#zone Europe/Lisbon\n',
      'goals.md': [...goals, ...routines, ''].join('\n'),
      '2026-02-24.md': day,
    });
    await journal.show('2026-02-24.md');
  });

  after(async () => {
    await journal.remove();
    await vscode.workspace.fs.delete(outside);
    bait.dispose();
  });

  async function hoverAt(words: string): Promise<readonly vscode.MarkdownString[]> {
    const document = await vscode.workspace.openTextDocument(journal.uri('2026-02-24.md'));
    return eventually(`hover over ${words}`, async () => {
      const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
        'vscode.executeHoverProvider',
        document.uri,
        document.positionAt(document.getText().indexOf(`${words} `)),
      );
      const contents = hovers.flatMap((hover) => hover.contents) as vscode.MarkdownString[];
      return contents.length > 0 ? contents : undefined;
    });
  }

  it('shows hovers in which nothing can be run but the goal page', async () => {
    for (const index of all.keys())
      for (const name of [`goal-${index}`, `routine-${index}`])
        for (const { value, isTrusted, supportHtml } of await hoverAt(name)) {
          const live = livePartsOf(value);
          const wanted = name.startsWith('goal') ? /^link command:trainingJournal\.openGoalPage\?/ : /^$/;
          assert.deepEqual(
            live.filter((part) => !wanted.test(part)),
            [],
            value,
          );
          assert.notEqual(isTrusted, true);
          if (typeof isTrusted === 'object')
            assert.deepEqual(isTrusted.enabledCommands, ['trainingJournal.openGoalPage']);
          assert.ok(!supportHtml);
        }
  });

  it('copies tables of readings that hold words and numbers only', async () => {
    for (const index of [0, Math.floor(all.length / 2), all.length - 1]) {
      await vscode.env.clipboard.writeText('');
      await vscode.commands.executeCommand('trainingJournal.copyGoalTable', {
        journal: journal.folder.toString(),
        goal: `goal-${index}`,
      });
      const table = await eventually(
        'table',
        async () => (await vscode.env.clipboard.readText()) || undefined,
      );
      assert.ok(table.includes(`| ${index + 1}cm |`), table);
      assert.deepEqual(livePartsOf(table), []);
    }
  });

  it('has run nothing, and has touched no file outside of its folder', async () => {
    assert.equal(ran, 0);
    assert.equal(new TextDecoder().decode(await vscode.workspace.fs.readFile(outside)), 'Not yours.\n');
    assert.equal(await journal.read('2026-02-24.md'), day);
  });
});

import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually } from '../scratch-journal';

const secret = 'the last pose frightens me';

const files: Readonly<Record<string, string>> = {
  'journal.md': '#athlete "Merle"\n#zone Europe/Berlin\n',
  'goals.md': `# Low split
- #goal low-split by:2026-06-14 "Front split [on](command:x) the floor"
- #why ${secret}
- #metric gap from:14cm to:0cm noise:1cm
- #need flexibility 2/week 75min routine:split-evening

# Routines
- #routine split-evening flexibility 75min regions:hamstrings
  - lunges, **slow**
`,
  '2026-02-17.md': '#measure low-split gap 12cm\n',
  '2026-02-24.md': `# Tuesday

- [x] #session flexibility 18:30 75min 8/10 for:low-split routine:split-evening
#measure low-split gap 10cm
#measure low-split gap 11cm
`,
  '2026-02-25.md': `# Wednesday

- [ ] #session flexibility 14:45 75min 6/10 for:low-split with:juno

`,
};

describe('the language of notes in the editor', () => {
  const root = vscode.workspace.workspaceFolders?.[0]?.uri ?? vscode.Uri.file('/');
  const folder = vscode.Uri.joinPath(root, 'merle');
  const uriOf = (name: string): vscode.Uri => vscode.Uri.joinPath(folder, name);
  const todayNote = uriOf('2026-02-25.md');

  before(async () => {
    for (const [name, text] of Object.entries(files)) {
      await vscode.workspace.fs.writeFile(uriOf(name), new TextEncoder().encode(text));
    }
    await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(todayNote));
    await eventually('goal among the symbols', async () => {
      const found = await vscode.commands.executeCommand<vscode.SymbolInformation[]>(
        'vscode.executeWorkspaceSymbolProvider',
        'low-split',
      );
      return found.some((symbol) => symbol.containerName === 'Merle') ? found : undefined;
    });
  });

  after(async () => {
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    await vscode.workspace.fs.delete(folder, { recursive: true });
  });

  /** The position behind the last occurrence of `words` in a document, or in its first with `first`. */
  function behind(document: vscode.TextDocument, words: string): vscode.Position {
    const offset = document.getText().lastIndexOf(words);
    assert.ok(offset >= 0, `${words} stands in ${document.uri.path}`);
    return document.positionAt(offset + words.length);
  }

  /** Writes `line` as the last one of today's note, without saving, and asks what can follow it. */
  async function completions(line: string, trigger?: string): Promise<vscode.CompletionItem[]> {
    const document = await vscode.workspace.openTextDocument(todayNote);
    const edit = new vscode.WorkspaceEdit();
    edit.replace(todayNote, document.lineAt(3).range, line);
    await vscode.workspace.applyEdit(edit);
    const { items } = await vscode.commands.executeCommand<vscode.CompletionList>(
      'vscode.executeCompletionItemProvider',
      todayNote,
      document.lineAt(3).range.end,
      trigger,
    );
    return items;
  }

  function labels(items: readonly vscode.CompletionItem[]): readonly string[] {
    return items.map(({ label }) => (typeof label === 'string' ? label : label.label));
  }

  async function hover(name: string, words: string): Promise<string> {
    const document = await vscode.workspace.openTextDocument(uriOf(name));
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      behind(document, words).translate(0, -1),
    );
    return hovers
      .flatMap(({ contents }) => contents)
      .map((content) => (typeof content === 'string' ? content : content.value))
      .join('\n');
  }

  it('completes tags behind #, with the box that a session needs', async () => {
    const items = await completions('#', '#');
    const session = items.find((item) => labels([item])[0] === '#session');
    assert.ok(session);
    assert.equal(
      session.insertText instanceof vscode.SnippetString && session.insertText.value,
      '- [ ] #session ',
    );
    assert.ok(labels(items).includes('#measure'));
  });

  it('leaves Markdown outside of journals alone', async () => {
    const document = await vscode.workspace.openTextDocument({ language: 'markdown', content: '#' });
    const { items } = await vscode.commands.executeCommand<vscode.CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      new vscode.Position(0, 1),
      '#',
    );
    assert.equal(labels(items).includes('#session'), false);
  });

  it('completes the name of a goal in the middle of a line that is being typed', async () => {
    const items = await completions('- [ ] #session flexibility 18:30 for:low', undefined);
    const goal = items.find((item) => labels([item])[0] === 'low-split');
    assert.ok(goal);
    const range = goal.range instanceof vscode.Range ? goal.range : goal.range?.replacing;
    assert.deepEqual([range?.start.character, range?.end.character], [37, 40]);
  });

  it('proposes the next reading in the unit of the last one', async () => {
    const items = await completions('#measure low-split gap ', ' ');
    const reading = items.find((item) => labels([item])[0] === '11cm');
    assert.equal(
      reading?.insertText instanceof vscode.SnippetString && reading.insertText.value,
      // biome-ignore lint/suspicious/noTemplateCurlyInString: a place to fill in
      '${1:11}cm',
    );
  });

  it('offers nothing behind a blank when nothing is missing', async () => {
    const items = await completions('- [ ] #session flexibility 18:30 ', ' ');
    assert.equal(labels(items).includes('for:'), false);
    assert.ok(labels(await completions('- [ ] #session flexibility 18:30 ')).includes('for:'));
  });

  it('explains a goal, without its private reason and without anything to run', async () => {
    await completions('');
    const text = await hover('2026-02-25.md', 'for:low-split');
    assert.ok(text.includes('Front split \\[on\\]\\(command\\:x\\) the floor'), text);
    assert.ok(text.includes('109 days'), text);
    assert.ok(text.includes('gap: 10.5'), text);
    assert.ok(text.includes('Not enough notes yet for a date: 2 of 5 days measured'), text);
    assert.ok(text.includes('command:trainingJournal.openGoalPage'), text);
    assert.equal(text.includes(secret), false);
  });

  it('explains a session: what it is, the hours since the last of its kind, what it counts for', async () => {
    const text = await hover('2026-02-25.md', '14:45');
    assert.ok(text.includes('Planned for'), text);
    assert.ok(text.includes('75 min') || text.includes('1 h 15 min'), text);
    // From Tuesday 19:45 to Wednesday 14:45.
    assert.ok(text.includes('19 h after the last flexibility session'), text);
    assert.ok(text.includes('number 2 of 2 this week'), text);
  });

  it('says above a session how long ago the last of its kind was, until that is switched off', async () => {
    const lenses = async () => {
      const found = await vscode.commands.executeCommand<vscode.CodeLens[]>(
        'vscode.executeCodeLensProvider',
        todayNote,
        // So many are resolved, as those in view are.
        10,
      );
      return found
        .sort((one, other) => one.range.start.compareTo(other.range.start))
        .map(({ command }) => command?.title ?? '');
    };
    assert.deepEqual(await lenses(), ['19 h after flexibility on Tuesday', 'tick as done']);
    const settings = vscode.workspace.getConfiguration('trainingJournal', todayNote);
    await settings.update('sessionLens.enabled', false, vscode.ConfigurationTarget.Workspace);
    await eventually('note without lenses', async () => ((await lenses()).length === 0 ? true : undefined));
    await settings.update('sessionLens.enabled', undefined, vscode.ConfigurationTarget.Workspace);
    await eventually('note with lenses', async () => ((await lenses()).length > 0 ? true : undefined));
  });

  it('explains a reading: its change since the last day, and what is left', async () => {
    const text = await hover('2026-02-24.md', '11cm');
    assert.ok(text.includes('10.5'), text);
    assert.ok(text.includes('the mean of 2 readings'), text);
    assert.ok(text.includes('1.5 cm nearer to the target than 12 cm'), text.replace(/\u00a0/g, ' '));
    assert.ok(text.includes('to go to the target of 0'), text);
    // 1.96 x 1 cm x sqrt(1/1 + 1/2): one reading before, two on the day.
    assert.ok(text.includes('within measuring noise: up to 2.4 cm'), text.replace(/\u00a0/g, ' '));
    assert.ok(text.includes('as written beside the metric'), text);
  });

  it('explains a session that is done with its load', async () => {
    const text = await hover('2026-02-24.md', '8/10');
    assert.ok(text.includes('Load 600'), text);
  });

  it('explains a routine with its exercises as they were written', async () => {
    const text = await hover('2026-02-24.md', 'routine:split-evening');
    assert.ok(text.includes('lunges, **slow**'), text);
    assert.ok(text.includes('```'), text);
  });

  it('goes from a name to its goal, and marks the whole name', async () => {
    const document = await vscode.workspace.openTextDocument(todayNote);
    const found = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>(
      'vscode.executeDefinitionProvider',
      todayNote,
      behind(document, 'for:low-split').translate(0, -3),
    );
    const links = found.filter((one): one is vscode.LocationLink => 'targetUri' in one);
    assert.deepEqual(
      links.map((one) => [one.targetUri.path.split('/').at(-1), one.targetSelectionRange?.start.line]),
      [['goals.md', 1]],
    );
    const origin = links[0]?.originSelectionRange;
    assert.equal(origin && document.getText(origin), 'low-split');
  });

  it('finds every place that names a goal', async () => {
    const document = await vscode.workspace.openTextDocument(uriOf('goals.md'));
    const found = await vscode.commands.executeCommand<vscode.Location[]>(
      'vscode.executeReferenceProvider',
      document.uri,
      behind(document, '#goal low-split').translate(0, -2),
    );
    const places = found.map(({ uri, range }) => `${uri.path.split('/').at(-1)}:${range.start.line}`);
    for (const place of [
      '2026-02-17.md:0',
      '2026-02-24.md:2',
      '2026-02-24.md:3',
      '2026-02-24.md:4',
      '2026-02-25.md:2',
    ]) {
      assert.ok(places.includes(place), `${place} among ${places.join(' ')}`);
    }
  });

  it('has goals, sessions and readings in the outline, a goal with what belongs to it', async () => {
    const symbols = async (name: string) =>
      vscode.commands.executeCommand<vscode.DocumentSymbol[]>(
        'vscode.executeDocumentSymbolProvider',
        uriOf(name),
      );
    const flat = (found: readonly vscode.DocumentSymbol[]): readonly string[] =>
      found.flatMap((symbol) => [symbol.name, ...flat(symbol.children ?? [])]);
    await vscode.workspace.openTextDocument(uriOf('2026-02-24.md'));
    const day = flat(await symbols('2026-02-24.md'));
    assert.ok(day.includes('flexibility 18:30'), day.join());
    assert.ok(day.includes('low-split gap'), day.join());
    const goals = await symbols('goals.md');
    const goal = [...goals, ...goals.flatMap((one) => one.children ?? [])].find(
      (one) => one.name === 'low-split',
    );
    assert.deepEqual(
      goal?.children.map((child) => child.name),
      ['gap'],
    );
  });

  describe('the goal page', () => {
    const tabs = (): readonly vscode.Tab[] =>
      vscode.window.tabGroups.all
        .flatMap((group) => group.tabs)
        .filter(
          ({ input }) =>
            input instanceof vscode.TabInputWebview && input.viewType.includes('trainingJournal.goalPage'),
        );

    it('opens once a journal', async () => {
      const asked = { journal: folder.toString(), goal: 'low-split' };
      await vscode.commands.executeCommand('trainingJournal.openGoalPage', asked);
      await eventually('goal page', async () => (tabs().length === 1 ? true : undefined));
      await vscode.commands.executeCommand('trainingJournal.openGoalPage', asked);
      assert.equal(tabs().length, 1);
    });

    it('gives its readings as a Markdown table', async () => {
      await vscode.commands.executeCommand('trainingJournal.copyGoalTable', {
        journal: folder.toString(),
        goal: 'low-split',
      });
      assert.equal(
        await vscode.env.clipboard.readText(),
        `| Day | Metric | Value |
| --- | --- | --- |
| 2026-02-17 | gap | 12cm |
| 2026-02-24 | gap | 10cm |
| 2026-02-24 | gap | 11cm |
`,
      );
    });
  });
});

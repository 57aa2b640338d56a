import * as vscode from 'vscode';
import { readNoteName } from '../../journal/note-name';
import { type CursorContext, cursorContext, possibleTagStart } from '../../notation/cursor-context';
import type { IsoDate } from '../../notation/time/iso-date';
import type { Proposal } from '../../planning/proposals/proposal';
import { proposals } from '../../planning/proposals/proposals';
import { rangeInText } from '../document-ranges';
import type { FeatureContext } from '../feature-context';
import { completionDescription, completionKind } from './completion-words';
import { noteSelector } from './note-selector';

/** Characters behind which something can be proposed at once. */
const triggers = ['#', ':', ' ', ','] as const;

const askAgain: vscode.Command = { command: 'editor.action.triggerSuggest', title: '' };

/**
 * Whether the typed character asks for anything here: `#` for tags, `:` and `,` for values, a blank only for what the
 * tag cannot do without, so that nobody who ends a line is given a word that was not asked for.
 */
function answersTrigger(character: string | undefined, context: CursorContext): boolean {
  if (character === '#') return context.place === 'tag-name';
  if (character === ':' || character === ',') return context.place === 'field' && context.name !== undefined;
  return character !== ' ' || context.place === 'field';
}

function itemOf(
  proposal: Proposal,
  index: number,
  today: IsoDate,
  range: { inserting: vscode.Range; replacing: vscode.Range },
): vscode.CompletionItem {
  const description = completionDescription(proposal, today);
  const label = description === '' ? proposal.label : { label: proposal.label, description };
  const item = new vscode.CompletionItem(label, completionKind(proposal));
  item.insertText = proposal.snippet ? new vscode.SnippetString(proposal.text) : proposal.text;
  item.filterText = proposal.label;
  item.sortText = String(index).padStart(4, '0');
  item.range = range;
  if (proposal.continues) item.command = askAgain;
  return item;
}

/** Proposes tags and what stands behind them, in the notes of journals only. */
export class NoteCompletion implements vscode.CompletionItemProvider {
  readonly #journals: FeatureContext['journals'];

  constructor(journals: FeatureContext['journals']) {
    this.#journals = journals;
  }

  async provideCompletionItems(
    document: vscode.TextDocument,
    position: vscode.Position,
    token: vscode.CancellationToken,
    trigger: vscode.CompletionContext,
  ): Promise<vscode.CompletionList | undefined> {
    const before = document.lineAt(position).text.slice(0, position.character);
    if (possibleTagStart(before) === undefined) return undefined;
    await this.#journals.ready;
    if (token.isCancellationRequested) return undefined;
    const found = this.#journals.find(document.uri);
    if (!found) return undefined;
    const text = document.getText();
    const context = cursorContext(text, document.offsetAt(position));
    const character =
      trigger.triggerKind === vscode.CompletionTriggerKind.TriggerCharacter
        ? trigger.triggerCharacter
        : undefined;
    if (!context || !answersTrigger(character, context)) return undefined;
    const name = readNoteName(found.path);
    const { journal } = found;
    const today = journal.today();
    const all = proposals(
      {
        journal: journal.journal,
        today,
        note: found.path,
        ...(name.kind === 'day' ? { date: name.date } : {}),
      },
      context,
    );
    const wanted = character === ' ' ? all.filter((one) => one.asked) : all;
    const replacing = rangeInText(text, context.range);
    const range = { inserting: new vscode.Range(replacing.start, position), replacing };
    // What follows a number changes with each digit, so it is asked for again.
    const isNumber = context.place === 'field' && /^[-+−]?\d/.test(context.typed);
    return new vscode.CompletionList(
      wanted.map((proposal, index) => itemOf(proposal, index, today, range)),
      isNumber,
    );
  }
}

/** Completion of tags and fields. */
export function registerCompletion({ journals }: FeatureContext): vscode.Disposable {
  return vscode.languages.registerCompletionItemProvider(
    noteSelector,
    new NoteCompletion(journals),
    ...triggers,
  );
}

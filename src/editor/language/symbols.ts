import * as vscode from 'vscode';
import type { Note } from '../../journal/note';
import type { Entry, GoalEntry } from '../../notation/entries';
import { formatQuantity } from '../../notation/quantity';
import type { SourceRange } from '../../notation/source-range';
import { formatTimeSpan } from '../../notation/time/wall-clock';
import { rangeInNote } from '../document-ranges';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { sessionStateIn } from '../session-state-in-note';
import { noteSelector } from './note-selector';

interface Line {
  readonly name: string | undefined;
  readonly detail: string;
  readonly kind: vscode.SymbolKind;
}

/** What the outline shows of an entry; `undefined` for entries that do not stand in it. */
function lineOf(journal: OpenJournal, note: Note, entry: Entry): Line | undefined {
  switch (entry.tag) {
    case 'goal':
      return { name: entry.id?.value, detail: entry.title?.value ?? '', kind: vscode.SymbolKind.Namespace };
    case 'metric':
      return {
        name: entry.name?.value,
        detail: entry.to ? vscode.l10n.t('to {0}', formatQuantity(entry.to.value)) : '',
        kind: vscode.SymbolKind.Number,
      };
    case 'step':
      return { name: entry.id?.value, detail: entry.by?.value ?? '', kind: vscode.SymbolKind.Boolean };
    case 'routine':
      return { name: entry.id?.value, detail: entry.kind?.value ?? '', kind: vscode.SymbolKind.Method };
    case 'session': {
      const time = entry.span && formatTimeSpan(entry.span.value);
      return {
        name: entry.kind && [entry.kind.value, time].filter((one) => one !== undefined).join(' '),
        detail: sessionStateIn(note, entry, journal.today())?.word ?? '',
        kind: vscode.SymbolKind.Event,
      };
    }
    case 'measure': {
      const about = [entry.goal?.value, entry.metric?.value].filter((one) => one !== undefined).join(' ');
      return {
        name: about,
        detail: [entry.quantity && formatQuantity(entry.quantity.value), entry.side?.value]
          .filter((one) => one !== undefined)
          .join(' '),
        kind: vscode.SymbolKind.Number,
      };
    }
    default:
      return undefined;
  }
}

/** The entry and its body; a goal reaches to the end of its scope. */
function wholeRange(entry: Entry): SourceRange {
  if (entry.tag === 'goal')
    return { start: entry.range.start, end: Math.max(entry.scope.end, entry.range.end) };
  return { start: entry.range.start, end: entry.body?.range.end ?? entry.range.end };
}

function symbolOf(journal: OpenJournal, note: Note, entry: Entry): vscode.DocumentSymbol | undefined {
  const line = lineOf(journal, note, entry);
  if (!line?.name) return undefined;
  return new vscode.DocumentSymbol(
    line.name,
    line.detail,
    line.kind,
    rangeInNote(note, wholeRange(entry)),
    rangeInNote(note, entry.nameRange),
  );
}

function goalAround(entry: Entry, goals: readonly GoalEntry[]): GoalEntry | undefined {
  return goals.find((goal) => goal.scope.start < entry.range.start && entry.range.end <= goal.scope.end);
}

/** Goals with what stands in their scope, routines, sessions and readings of a note. */
export function noteSymbols(journal: OpenJournal, note: Note): vscode.DocumentSymbol[] {
  const goals = note.reading.entries.filter((entry): entry is GoalEntry => entry.tag === 'goal');
  const byGoal = new Map<GoalEntry, vscode.DocumentSymbol>();
  const top: vscode.DocumentSymbol[] = [];
  for (const entry of note.reading.entries) {
    const symbol = symbolOf(journal, note, entry);
    if (!symbol) continue;
    const goal = goalAround(entry, goals);
    const parent = goal && byGoal.get(goal);
    if (parent) parent.children.push(symbol);
    else top.push(symbol);
    if (entry.tag === 'goal') byGoal.set(entry, symbol);
  }
  return top;
}

function documentSymbols({ journals }: FeatureContext): vscode.DocumentSymbolProvider {
  return {
    async provideDocumentSymbols(document, token) {
      // The outline is asked for once, when a note is opened.
      await journals.ready;
      const found = token.isCancellationRequested ? undefined : journals.noteOf(document);
      return found && noteSymbols(found.journal, found.note);
    },
  };
}

/** Goals and routines of every journal; the editor itself compares them with what was typed. */
function workspaceSymbols({ journals }: FeatureContext): vscode.WorkspaceSymbolProvider {
  return {
    async provideWorkspaceSymbols(_query, token) {
      await journals.ready;
      if (token.isCancellationRequested) return undefined;
      return journals.all().flatMap((journal) => {
        const { goals, routines } = journal.journal.plan;
        return [...goals.values(), ...routines.values()].flatMap(({ id, note: path, entry }) => {
          const note = journal.journal.note(path);
          const kind = entry.tag === 'goal' ? vscode.SymbolKind.Namespace : vscode.SymbolKind.Method;
          if (!note) return [];
          const location = new vscode.Location(journal.uriOf(path), rangeInNote(note, entry.range));
          return [new vscode.SymbolInformation(id, kind, journal.title, location)];
        });
      });
    },
  };
}

/** The outline of a note, and goals and routines among the symbols of the workspace. */
export function registerSymbols(context: FeatureContext): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.languages.registerDocumentSymbolProvider(noteSelector, documentSymbols(context), {
      label: vscode.l10n.t('Training'),
    }),
    vscode.languages.registerWorkspaceSymbolProvider(workspaceSymbols(context)),
  );
}

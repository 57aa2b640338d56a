import * as vscode from 'vscode';
import { nameAt } from '../../journal/named-places';
import type { Note } from '../../journal/note';
import { type SourceRange, touches } from '../../notation/source-range';
import { tagRange } from '../../training/session-place';
import { offsetInNote, rangeInNote } from '../document-ranges';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { goalHover } from './goal-hover';
import { measureHover } from './measure-hover';
import { noteSelector } from './note-selector';
import { routineHover } from './routine-hover';
import { sessionHover } from './session-hover';

/** Commands that a hover may link to; nothing else in it can be run. */
const hoverCommands = ['trainingJournal.openGoalPage'];

function paragraphsAt(
  journal: OpenJournal,
  note: Note,
  offset: number,
): { readonly range: SourceRange; readonly paragraphs: readonly string[] | undefined } | undefined {
  const named = nameAt(journal.journal, note, offset);
  if (named && named.thing.of !== 'metric') {
    const paragraphs =
      named.thing.of === 'goal' ? goalHover(journal, named.thing.id) : routineHover(journal, named.thing.id);
    return { range: named.name.range, paragraphs };
  }
  const entry = note.reading.entries.find((one) => touches(tagRange(one), offset));
  if (entry?.tag === 'goal' && entry.id) {
    return { range: tagRange(entry), paragraphs: goalHover(journal, entry.id.value) };
  }
  if (entry?.tag === 'session') {
    return { range: tagRange(entry), paragraphs: sessionHover(journal, note, entry) };
  }
  if (entry?.tag === 'measure') {
    return { range: tagRange(entry), paragraphs: measureHover(journal, note, entry) };
  }
  return undefined;
}

/** Says what stands behind a goal's name, a routine's name, a session or a reading. */
export class NoteHover implements vscode.HoverProvider {
  readonly #journals: FeatureContext['journals'];

  constructor(journals: FeatureContext['journals']) {
    this.#journals = journals;
  }

  async provideHover(
    document: vscode.TextDocument,
    position: vscode.Position,
    token: vscode.CancellationToken,
  ): Promise<vscode.Hover | undefined> {
    await this.#journals.ready;
    const found = token.isCancellationRequested ? undefined : this.#journals.noteOf(document);
    if (!found) return undefined;
    const at = paragraphsAt(found.journal, found.note, offsetInNote(found.note, position));
    if (!at?.paragraphs || at.paragraphs.length === 0) return undefined;
    const text = new vscode.MarkdownString(at.paragraphs.join('\n\n'));
    text.isTrusted = { enabledCommands: hoverCommands };
    return new vscode.Hover(text, rangeInNote(found.note, at.range));
  }
}

/** Hovers over goals, routines, sessions and readings. */
export function registerHover({ journals }: FeatureContext): vscode.Disposable {
  return vscode.languages.registerHoverProvider(noteSelector, new NoteHover(journals));
}

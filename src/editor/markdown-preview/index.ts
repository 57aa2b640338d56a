import * as vscode from 'vscode';
import type { Note } from '../../journal/note';
import type { SessionEntry } from '../../notation/entries';
import { dayNumber } from '../../notation/time/iso-date';
import { type SessionState, sessionState } from '../../training/session-state';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { drawTags } from './draw-tags';
import { goalAddress } from './goal-address';
import type { MarkdownItOfPreview } from './markdown-it';
import type { PreviewNote } from './tag-html';

function stateWord(state: SessionState): string {
  switch (state) {
    case 'done':
      return vscode.l10n.t('done');
    case 'overdue':
      return vscode.l10n.t('overdue');
    case 'skipped':
      return vscode.l10n.t('skipped');
    case 'moved':
      return vscode.l10n.t('moved');
    case 'planned':
      return vscode.l10n.t('planned');
  }
}

function stateOf(journal: OpenJournal, note: Note | undefined, entry: SessionEntry) {
  if (note?.name.kind !== 'day' || !entry.kind) return undefined;
  const { date } = note.name;
  const session = { note: note.path, entry, date, day: dayNumber(date), kind: entry.kind.value };
  const is = sessionState(session, journal.today());
  return { is, word: stateWord(is) };
}

/** The address of the document that is drawn, as the editor hands it over. */
function documentOf(env: unknown): vscode.Uri | undefined {
  if (typeof env !== 'object' || env === null || !('currentDocument' in env)) return undefined;
  const { currentDocument } = env;
  return currentDocument instanceof vscode.Uri ? currentDocument : undefined;
}

function previewNote({ journals }: FeatureContext, env: unknown): PreviewNote | undefined {
  const uri = documentOf(env);
  const found = uri && journals.find(uri);
  if (!found) return undefined;
  const { journal } = found;
  return {
    state: (entry) => stateOf(journal, found.note, entry),
    goalAddress: (id) => goalAddress(journal, id, uri),
  };
}

/** What the editor's Markdown preview asks an extension for. */
export interface PreviewExtension {
  extendMarkdownIt<Markdown extends MarkdownItOfPreview>(markdown: Markdown): Markdown;
}

/** Draws tags in the editor's Markdown preview. */
export function previewExtension(context: FeatureContext): PreviewExtension {
  return { extendMarkdownIt: (markdown) => drawTags(markdown, (env) => previewNote(context, env)) };
}

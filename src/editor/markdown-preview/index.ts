import * as vscode from 'vscode';
import type { FeatureContext } from '../feature-context';
import { sessionStateIn } from '../session-state-in-note';
import { drawTags } from './draw-tags';
import { goalAddress } from './goal-address';
import type { MarkdownItOfPreview } from './markdown-it';
import type { PreviewNote } from './tag-html';

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
    state: (entry) => sessionStateIn(found.note, entry, journal.today()),
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

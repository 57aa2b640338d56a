import type * as vscode from 'vscode';

/** Markdown documents, in the shape in which the editor's own Markdown features select them. */
export const noteSelector: vscode.DocumentSelector = { language: 'markdown' };

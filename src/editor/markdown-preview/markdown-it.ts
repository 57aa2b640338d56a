/** What is used of markdown-it, which the editor's Markdown preview is made with and hands over. */

export interface PreviewToken {
  readonly type: string;
  content: string;
  children: PreviewToken[] | null;
  /** First line and the line after the last, from 0. */
  readonly map: readonly [number, number] | null;
}

export interface PreviewState {
  /** The whole text, line endings made `\n`. */
  readonly src: string;
  readonly tokens: PreviewToken[];
  readonly env: unknown;
  readonly Token: new (type: string, tag: string, nesting: -1 | 0 | 1) => PreviewToken;
}

export interface MarkdownItOfPreview {
  readonly core: { readonly ruler: { push(name: string, rule: (state: PreviewState) => void): void } };
}

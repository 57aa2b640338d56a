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
  readonly Token: new (type: string, tag: string, nesting: -1 | 0 | 1) => PreviewToken;
}

/** Makes the HTML of `tokens[index]`; only here does `env` say what document is drawn. */
export type RenderRule = (
  tokens: readonly PreviewToken[],
  index: number,
  options: unknown,
  env: unknown,
) => string;

export interface MarkdownItOfPreview {
  readonly renderer: { readonly rules: { [type: string]: RenderRule | undefined } };
  readonly core: { readonly ruler: { push(name: string, rule: (state: PreviewState) => void): void } };
}

/** What the tests use of markdown-it, which comes without types. */
declare module 'markdown-it' {
  import type { MarkdownItOfPreview } from '../../src/editor/markdown-preview/markdown-it';

  export default class MarkdownIt implements MarkdownItOfPreview {
    constructor(options?: { readonly html?: boolean });
    readonly core: MarkdownItOfPreview['core'];
    readonly renderer: MarkdownItOfPreview['renderer'];
    parse(text: string, env: object): readonly object[];
    render(text: string, env?: object): string;
  }
}

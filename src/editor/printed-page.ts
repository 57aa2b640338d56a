import { usableLanguage } from './date-words';
import { htmlText } from './html-text';

/** What a printed page is made of. */
export interface PrintedPage {
  /** BCP 47 tag. */
  readonly language: string;
  /** HTML of plain words. */
  readonly title: string;
  /** A style sheet. */
  readonly style: string;
  /** HTML. */
  readonly content: string;
}

/** A page to print as one HTML file: no script, and nothing from anywhere else. */
export function printedPage({ language, title, style, content }: PrintedPage): string {
  const policy = "default-src 'none'; style-src 'unsafe-inline'";
  return `<!DOCTYPE html>
<html lang="${htmlText(usableLanguage(language))}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>
${style}
</style>
</head>
<body>
<main>
${content}
</main>
</body>
</html>
`;
}

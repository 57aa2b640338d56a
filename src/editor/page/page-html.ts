/** What a page's frame is made from. */
export interface PageFrame {
  /** Addresses of the page's script and style sheet. */
  readonly script: string;
  readonly style: string;
  /** Where style sheets may come from. */
  readonly styleSource: string;
  /** A word that no note can guess, by which the page's own script is told from any other. */
  readonly nonce: string;
  readonly language: string;
  readonly title: string;
}

function inAttribute(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
}

/**
 * 32 hexadecimal digits by chance. Hosts of older editors lack the machine's own source of chance; there a weaker one
 * will do, because the frame holds nothing that anyone else has written.
 */
export function newNonce(): string {
  const bytes =
    typeof crypto === 'undefined'
      ? Array.from({ length: 16 }, () => Math.floor(Math.random() * 256))
      : [...crypto.getRandomValues(new Uint8Array(16))];
  return bytes.map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * The page's frame: one style sheet, one script, and a policy that lets nothing else in. It holds no word of any
 * note: these come later, as text.
 */
export function pageHtml(frame: PageFrame): string {
  const policy = `default-src 'none'; style-src ${frame.styleSource}; script-src 'nonce-${frame.nonce}'`;
  return `<!DOCTYPE html>
<html lang="${inAttribute(frame.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${inAttribute(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${inAttribute(frame.style)}">
<title>${inAttribute(frame.title)}</title>
</head>
<body>
<script nonce="${frame.nonce}" src="${inAttribute(frame.script)}"></script>
</body>
</html>
`;
}

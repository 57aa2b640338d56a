/** Text as it is written in HTML, between tags and in attributes: never markup. */
export function escapedMarkup(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

import { parseDocument } from 'yaml';
import type { NotationProblem } from './notation-problem';
import type { FrontMatter } from './note-reading';
import type { SourceRange } from './source-range';

/**
 * Reads the YAML between a note's fences. YAML that cannot be read is reported where it breaks, and has no
 * values.
 */
export function readFrontMatter(
  text: string,
  range: SourceRange,
): { readonly frontMatter: FrontMatter; readonly problems: readonly NotationProblem[] } {
  const document = parseDocument(text.slice(range.start, range.end), {
    logLevel: 'silent',
    prettyErrors: false,
  });
  const error = document.errors[0];
  if (error) {
    const start = Math.min(range.start + error.pos[0], Math.max(range.start, range.end - 1));
    const end = Math.min(range.end, Math.max(start + 1, range.start + error.pos[1]));
    const place = { start, end };
    return {
      frontMatter: { range, values: {} },
      problems: [
        {
          code: 'unreadable-field',
          reason: 'front-matter',
          range: place,
          text: text.slice(place.start, place.end),
        },
      ],
    };
  }
  const values = plainValues(() => document.toJS());
  return { frontMatter: { range, values }, problems: [] };
}

/** A mapping's keys and values; anything else, and aliases that grow out of hand, count as none. */
function plainValues(read: () => unknown): Readonly<Record<string, unknown>> {
  try {
    const value = read();
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : {};
  } catch {
    return {};
  }
}

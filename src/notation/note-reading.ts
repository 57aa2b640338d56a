import type { Entry } from './entries';
import type { NotationProblem } from './notation-problem';
import type { SourceRange } from './source-range';

/** The YAML block at the top of a note. */
export interface FrontMatter {
  /** The YAML itself, fences left out. */
  readonly range: SourceRange;
  /** Its keys and values; empty when it is not a mapping or cannot be read. */
  readonly values: Readonly<Record<string, unknown>>;
}

/** A heading of a note. */
export interface Heading {
  /** 1 to 6. */
  readonly depth: number;
  readonly range: SourceRange;
  /** Its words, without the marks. */
  readonly text: string;
}

/** Everything that the notation sees in one note, in the order of the text. */
export interface NoteReading {
  readonly frontMatter?: FrontMatter;
  readonly headings: readonly Heading[];
  readonly entries: readonly Entry[];
  readonly problems: readonly NotationProblem[];
}

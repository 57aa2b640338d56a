import { asterisk } from './characters';

/** A run of `*` or `_` that may open or close emphasis, or a piece of words. */
export type Piece = string | Delimiters;

/** A run of equal delimiters. */
export interface Delimiters {
  readonly marker: number;
  /** How many are left. */
  length: number;
  readonly canOpen: boolean;
  readonly canClose: boolean;
}

type CharacterClass = 'space' | 'punctuation' | 'other';

function classOf(unit: number): CharacterClass {
  if (Number.isNaN(unit)) return 'space';
  const character = String.fromCharCode(unit);
  if (/\s/.test(character)) return 'space';
  return /\p{P}|\p{S}/u.test(character) ? 'punctuation' : 'other';
}

/**
 * The run of `length` delimiters between two characters; CommonMark 0.31.2, section 6.2, says when it can open and close.
 * @param before The character before it, `NaN` at the start of the text.
 * @param after The character behind it, `NaN` at the end of the text.
 */
export function delimiters(marker: number, length: number, before: number, after: number): Delimiters {
  const left = classOf(before);
  const right = classOf(after);
  const opens = right === 'other' || (right === 'punctuation' && left !== 'other');
  const closes = left === 'other' || (left === 'punctuation' && right !== 'other');
  if (marker === asterisk) return { marker, length, canOpen: opens, canClose: closes };
  return {
    marker,
    length,
    canOpen: opens && (left !== 'other' || !closes),
    canClose: closes && (right !== 'other' || !opens),
  };
}

/** Openers by what decides whether a closer matches them: marker, length modulo 3, and whether they can close. */
class Openers {
  private readonly stacks = new Map<number, number[]>();

  constructor(private readonly pieces: readonly Piece[]) {}

  private key(run: Delimiters): number {
    return run.marker * 6 + (run.length % 3) * 2 + (run.canClose ? 1 : 0);
  }

  add(index: number): void {
    const run = this.pieces[index];
    if (typeof run !== 'object' || !run.canOpen || run.length === 0) return;
    const stack = this.stacks.get(this.key(run));
    if (stack) stack.push(index);
    else this.stacks.set(this.key(run), [index]);
  }

  /** The nearest opener for `closer`, with all openers behind it forgotten and itself taken out; or -1. */
  take(closer: Delimiters): number {
    let best = -1;
    for (let remainder = 0; remainder < 3; remainder += 1)
      for (const canClose of [0, 1]) {
        // The rule of three, with the lengths that are left, as the tree's parser counts them.
        const isMixed = canClose === 1 || closer.canOpen;
        if (isMixed && closer.length % 3 !== 0 && (remainder + closer.length) % 3 === 0) continue;
        const stack = this.stacks.get(closer.marker * 6 + remainder * 2 + canClose);
        best = Math.max(best, stack?.at(-1) ?? -1);
      }
    if (best >= 0) this.forgetFrom(best);
    return best;
  }

  private forgetFrom(index: number): void {
    for (const stack of this.stacks.values()) while ((stack.at(-1) ?? -1) >= index) stack.pop();
  }
}

/**
 * Words without the delimiters that make emphasis; the others stay. Takes steps in proportion to the characters.
 * @param pieces Words and delimiters in the order of the text; the lengths of the delimiters are used up.
 */
export function withoutEmphasis(pieces: readonly Piece[]): string {
  const openers = new Openers(pieces);
  pieces.forEach((closer, index) => {
    if (typeof closer !== 'object') return;
    while (closer.canClose && closer.length > 0) {
      const found = openers.take(closer);
      const opener = pieces[found];
      if (typeof opener !== 'object') break;
      const used = opener.length > 1 && closer.length > 1 ? 2 : 1;
      opener.length -= used;
      closer.length -= used;
      openers.add(found);
    }
    openers.add(index);
  });
  return pieces
    .map((piece) =>
      typeof piece === 'object' ? String.fromCharCode(piece.marker).repeat(piece.length) : piece,
    )
    .join('');
}

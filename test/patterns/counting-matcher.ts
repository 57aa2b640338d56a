import type { AstNode, Expression, Quantifier } from 'regexp-tree/ast';
import { generate, parse } from './pattern-tree';

/** A pattern takes more steps than it may. */
export class TooManyStepsError extends Error {}

type Continue = (at: number) => boolean;

/** Matches a part of a pattern at a place, and goes on with what follows. */
type Part = (text: string, at: number, then: Continue) => boolean;

const nothing: Part = (_text, at, then) => then(at);

function bounds(quantifier: Quantifier): { readonly least: number; readonly most: number } {
  if (quantifier.kind === 'Range') return { least: quantifier.from, most: quantifier.to ?? Infinity };
  return { least: quantifier.kind === '+' ? 1 : 0, most: quantifier.kind === '?' ? 1 : Infinity };
}

/**
 * A pattern that counts how often it looks at a character. It goes about it as the engine of the language does: the
 * first way first, back to the last choice when that fails, and from each place of the text anew; without the short cuts
 * that an engine may know.
 */
export class CountingMatcher {
  readonly #start: Part;
  readonly #flags: string;
  #steps = 0;
  #most = Infinity;

  /** @throws SyntaxError for a pattern that the parser does not know */
  constructor(pattern: string) {
    const tree = parse(pattern);
    this.#flags = tree.flags;
    this.#start = this.#part(tree.body);
  }

  /**
   * Steps of looking for all matches of the pattern in `text`, or for the first one when it has no flag `g`.
   * @throws TooManyStepsError when it takes more than `most`
   */
  steps(text: string, most: number): number {
    this.#steps = 0;
    this.#most = most;
    let last = 0;
    for (let at = 0; at <= text.length; at = Math.max(at + 1, last)) {
      this.#count();
      const isFound = this.#start(text, at, (end) => {
        last = end;
        return true;
      });
      if (isFound && !this.#flags.includes('g')) break;
      if (!isFound) last = 0;
    }
    return this.#steps;
  }

  #count(): void {
    this.#steps += 1;
    if (this.#steps > this.#most) throw new TooManyStepsError(`More than ${this.#most} steps.`);
  }

  #part(node: Expression | null): Part {
    switch (node?.type) {
      case undefined:
        return nothing;
      case 'Char':
      case 'CharacterClass':
        return this.#character(node);
      case 'Alternative':
        return node.expressions
          .map((one) => this.#part(one))
          .reduceRight(
            (rest, one) => (text, at, then) => one(text, at, (end) => rest(text, end, then)),
            nothing,
          );
      case 'Disjunction': {
        const [left, right] = [this.#part(node.left), this.#part(node.right)];
        return (text, at, then) => left(text, at, then) || right(text, at, then);
      }
      case 'Group':
        return this.#part(node.expression);
      case 'Repetition':
        return this.#repetition(this.#part(node.expression), node.quantifier);
      case 'Assertion':
        return this.#assertion(node);
      default:
        // The types of the parser do not tell of this one, such as `\\p{L}`.
        if (String(node?.type) === 'UnicodeProperty') return this.#character(node as AstNode);
        throw new SyntaxError(`This matcher does not know ${node?.type}.`);
    }
  }

  #character(node: AstNode): Part {
    // What can stand in its place is asked of the real thing.
    const one = new RegExp(`^(?:${generate(node)})$`, this.#flags.replace(/[gy]/g, ''));
    return (text, at, then) => {
      this.#count();
      return at < text.length && one.test(text[at] ?? '') && then(at + 1);
    };
  }

  #repetition(once: Part, quantifier: Quantifier): Part {
    const { least, most } = bounds(quantifier);
    const from =
      (done: number): Part =>
      (text, at, then) => {
        const more = () =>
          done < most &&
          once(text, at, (end) => (end > at || done < least) && from(done + 1)(text, end, then));
        if (done < least) return more();
        return quantifier.greedy ? more() || then(at) : then(at) || more();
      };
    return from(0);
  }

  #assertion(node: Extract<Expression, { readonly type: 'Assertion' }>): Part {
    if (node.kind === 'Lookahead' || node.kind === 'Lookbehind') {
      const inner = this.#part(node.assertion);
      // Those that look back here look back at one character.
      const back = node.kind === 'Lookbehind' ? 1 : 0;
      return (text, at, then) => {
        const holds = at >= back && inner(text, at - back, (end) => back === 0 || end === at);
        return holds !== (node.negative ?? false) && then(at);
      };
    }
    const holds = new RegExp(node.kind, 'y');
    return (text, at, then) => {
      this.#count();
      holds.lastIndex = at;
      return holds.test(text) && then(at);
    };
  }
}

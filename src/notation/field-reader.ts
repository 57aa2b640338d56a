import type { FieldToken } from './field-tokens';
import { isWord, looksLikeNumber, type ValueKind } from './field-values';
import type { NotationProblem, UnreadableReason } from './notation-problem';
import type { Located, SourceRange } from './source-range';
import { explainLeftover } from './unread-field';

/**
 * Hands out the fields of one tag: each is taken at most once, in any order. What nobody took is a problem.
 * Lives only while one tag is read.
 */
export class FieldReader {
  readonly #left: FieldToken[];
  readonly #problems: NotationProblem[] = [];
  readonly #names: string[] = [];
  readonly #bare: ValueKind<unknown>[] = [];
  readonly #nameRange: SourceRange;

  /** @param nameRange The tag's `#name`, on which a missing field is reported. */
  constructor(fields: readonly FieldToken[], nameRange: SourceRange) {
    this.#left = [...fields];
    this.#nameRange = nameRange;
  }

  /** The value of the named field `name`. */
  named<T>(name: string, kind: ValueKind<T>): Located<T> | undefined {
    this.#names.push(name);
    const token = this.#take((one) => one.name?.value === name);
    return token && this.#value(token, token.value, kind);
  }

  /** The comma-separated values of the named field `name`. */
  namedList<T>(name: string, kind: ValueKind<T>): readonly Located<T>[] {
    this.#names.push(name);
    const token = this.#take((one) => one.name?.value === name);
    if (!token) return [];
    if (token.quoted || token.value.value === '') {
      const one = this.#value(token, token.value, kind);
      return one ? [one] : [];
    }
    const values: Located<T>[] = [];
    let start = token.value.range.start;
    for (const part of token.value.value.split(',')) {
      const value = this.#value(token, { value: part, range: { start, end: start + part.length } }, kind);
      if (value) values.push(value);
      start += part.length + 1;
    }
    return values;
  }

  /** The first unnamed field that `kind` can read. */
  bare<T>(kind: ValueKind<T>): Located<T> | undefined {
    this.#bare.push(kind);
    const token = this.#take((one) => !one.name && !one.quoted && kind.read(one.text) !== undefined);
    const value = token && kind.read(token.text);
    return token && value !== undefined ? { value, range: token.range } : undefined;
  }

  /** Every unnamed field that `kind` can read. */
  bareList<T>(kind: ValueKind<T>): readonly Located<T>[] {
    const values: Located<T>[] = [];
    for (let value = this.bare(kind); value; value = this.bare(kind)) values.push(value);
    return values;
  }

  /** Whether the word `word` stands among the fields. */
  flag(word: string): Located<true> | undefined {
    const token = this.#take((one) => !one.name && one.text === word);
    return token && { value: true, range: token.range };
  }

  /** The next word that is not a number with a unit. Take everything with a shape of its own first. */
  word(): Located<string> | undefined {
    const token = this.#take((one) => !one.name && isWord(one.text) && !looksLikeNumber(one.text));
    return token && { value: token.text, range: token.range };
  }

  /** Words in quotation marks. */
  quoted(): Located<string> | undefined {
    const token = this.#take((one) => !one.name && one.quoted && !one.unclosed);
    return token?.value;
  }

  /** Reports the tag's name when `value`, a field that the tag cannot do without, is not there. */
  require(value: unknown, what: string): void {
    if (value !== undefined || this.#problems.length > 0 || this.#left.length > 0) return;
    this.report('missing-field', this.#nameRange, '', [what]);
  }

  /** Adds a problem on `range`. */
  report(reason: UnreadableReason, range: SourceRange, text: string, expected?: readonly string[]): void {
    this.#problems.push({ code: 'unreadable-field', reason, range, text, ...(expected ? { expected } : {}) });
  }

  /** All problems, those of fields that nobody took among them. Ends the reading. */
  finish(): readonly NotationProblem[] {
    return [...this.#problems, ...explainLeftover(this.#left, { names: this.#names, bare: this.#bare })];
  }

  #take(fits: (token: FieldToken) => boolean): FieldToken | undefined {
    const index = this.#left.findIndex(fits);
    return index < 0 ? undefined : this.#left.splice(index, 1)[0];
  }

  #value<T>(token: FieldToken, written: Located<string>, kind: ValueKind<T>): Located<T> | undefined {
    const { value: text, range } = written;
    if (token.unclosed) {
      this.report('unclosed-quote', token.range, token.text);
      return undefined;
    }
    if (text === '') {
      this.report('empty-value', token.range, token.text, kind.examples);
      return undefined;
    }
    const value = kind.read(text);
    if (value !== undefined) return { value, range };
    const unread = { ...token, range, text };
    const next = this.#neighbour(token);
    const problems = explainLeftover(next ? [unread, next] : [unread], { names: [], bare: [kind] });
    if (next && problems.length === 1) this.#take((one) => one === next);
    this.#problems.push(...problems.slice(0, 1));
    return undefined;
  }

  /** The unnamed field close behind `token`, which may be the unit that belongs to it. */
  #neighbour(token: FieldToken): FieldToken | undefined {
    return this.#left.find((one) => !one.name && one.range.start === token.range.end + 1);
  }
}

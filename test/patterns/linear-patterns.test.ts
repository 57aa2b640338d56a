// That a pattern goes through a text in steps in proportion to its length is shown here by counting, on texts that are
// made of the pattern's own characters; it is no proof for all texts. What is counted are the steps of a matcher that
// goes back as the engine of the language does.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, it } from 'mocha';
import type { AstNode } from 'regexp-tree/ast';
import ts from 'typescript';
import { CountingMatcher, TooManyStepsError } from './counting-matcher';
import { generate, parse, traverse } from './pattern-tree';

/** Every pattern that stands in the sources, with the file in which it does. */
function patternsIn(folder: string): readonly { readonly file: string; readonly pattern: string }[] {
  const found: { file: string; pattern: string }[] = [];
  for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    if (!file.endsWith('.ts')) continue;
    const source = ts.createSourceFile(
      file,
      readFileSync(join(folder, file), 'utf8'),
      ts.ScriptTarget.Latest,
    );
    const walk = (node: ts.Node): void => {
      if (ts.isRegularExpressionLiteral(node)) found.push({ file, pattern: node.text });
      ts.forEachChild(node, walk);
    };
    walk(source);
  }
  return found;
}

/** Whether some part of the pattern can be repeated without end; any other takes bounded steps at each place. */
function isUnbounded(pattern: string): boolean {
  let found = false;
  traverse(parse(pattern), {
    Quantifier: ({ node }) => {
      if (node.kind === 'Range' ? node.to === undefined : node.kind !== '?') found = true;
    },
  });
  return found;
}

const candidates = [...' \t\n\r#-*_>.,;:[]()<>/\\x0aZ=é—`~{}|?!\'"TBE@%&+gP'];
const mostSamples = 7;

/** Characters of which each is told apart by the pattern from those before it. */
function samplesOf(pattern: string): readonly string[] {
  const flags = pattern.slice(pattern.lastIndexOf('/') + 1).replace(/[gy]/g, '');
  const parts: RegExp[] = [];
  const own: string[] = [];
  const keep = (node: AstNode) => parts.push(new RegExp(`^(?:${generate(node)})$`, flags));
  traverse(parse(pattern), {
    CharacterClass: ({ node }) => void keep(node),
    Char: ({ node, parent }) => {
      if (parent?.type === 'ClassRange' || parent?.type === 'CharacterClass') return;
      keep(node);
      if (node.kind === 'simple') own.push(node.value.replace(/^\\/, ''));
    },
  });
  const samples = new Map<string, string>();
  for (const one of [...candidates, ...own]) {
    const told = parts.map((part) => part.test(one)).join();
    if (!samples.has(told)) samples.set(told, one);
  }
  return [...samples.values()].slice(0, mostSamples);
}

/** Texts of about `length` characters that make a pattern go back: something over and over, between two ends. */
function* hardTexts(samples: readonly string[], length: number): Generator<string> {
  const pumps = [
    ...samples,
    ...samples.flatMap((one) => samples.map((other) => one + other)),
    samples.join(''),
  ];
  for (const head of ['', ...samples])
    for (const pump of pumps)
      for (const tail of ['', '\u0001', '\n\u0001']) yield head + pump.repeat(length / pump.length) + tail;
}

/** The text for which the steps grow most when it is twice as long; `undefined` when they double at the most. */
function worstText(pattern: string): string | undefined {
  const matcher = new CountingMatcher(pattern);
  const samples = samplesOf(pattern);
  const short = [...hardTexts(samples, 60)];
  const long = [...hardTexts(samples, 240)];
  return short.find((text, index) => {
    try {
      const steps = matcher.steps(text, 100_000);
      // Four times the length: four times the steps when they are in proportion, sixteen times with its square.
      matcher.steps(long[index] ?? '', 8 * steps + 400);
      return false;
    } catch (error) {
      if (error instanceof TooManyStepsError) return true;
      throw error;
    }
  });
}

describe('the patterns in the sources', function () {
  this.timeout(120_000);
  const patterns = patternsIn('src');

  it('go through texts of their own characters in steps in proportion to the length', () => {
    const unbounded = [...new Map(patterns.map((one) => [one.pattern, one])).values()].filter(({ pattern }) =>
      isUnbounded(pattern),
    );
    assert.ok(unbounded.length > 50, `${unbounded.length} patterns`);
    const slow = unbounded.flatMap(({ file, pattern }) => {
      const text = worstText(pattern);
      return text === undefined ? [] : [`${file}: ${pattern}`];
    });
    assert.deepEqual(slow, []);
  });

  it('are told from those that do not', () => {
    for (const pattern of ['/a+$/', '/\\S+\\.x/', '/^(?:a+)+$/', '/^ *a? *b/', '/<[^>]*>/', '/(?:a|a)*b/'])
      assert.notEqual(worstText(pattern), undefined, pattern);
    for (const pattern of ['/^a+$/', '/[^\\n]+/g', '/^(?:a+b)+$/', '/^ *a *b/', '/\\{(\\d+)\\}/g'])
      assert.equal(worstText(pattern), undefined, pattern);
  });
});

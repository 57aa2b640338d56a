import assert from 'node:assert/strict';
import { scanLines } from '../../src/notation/markdown/scan-lines';
import { StepCounter } from './counted-steps';

/** Characters of each text; `SCANNER_LENGTH=1000000` tries longer ones. */
const length = Number(process.env.SCANNER_LENGTH ?? 50_000);

/**
 * Steps for one character. Most texts here take 5 to 35, and as many when they are twenty times longer; links that open
 * one parenthesis after the other take 230, because 32 of them are passed again for each link. A reader whose steps
 * grow with the square of the length takes thousands.
 */
const mostSteps = 300;

/** A text of `length` characters: `part` over and over between `head` and `tail`. */
function filled(part: string, head = '', tail = ''): string {
  return head + part.repeat(Math.ceil((length - head.length - tail.length) / part.length)) + tail;
}

/** Two parts, each filling half of the text. */
function halves(first: string, second: string): string {
  const half = (part: string) => part.repeat(Math.ceil(length / 2 / part.length));
  return half(first) + half(second);
}

/** Texts that make a reader that goes back, or looks ahead, do so again and again. */
const texts: Readonly<Record<string, () => string>> = {
  'tasks with tags': () => filled('- [ ] #session skill\n'),
  'one paragraph of tags': () => filled('#session skill\n'),
  'one line': () => filled('a ', '#session '),
  'blank lines': () => filled('\n'),
  'line endings of all kinds': () => filled('\r\n\r#a\n'),
  'CR alone': () => filled('#a\r'),
  'NUL characters': () => filled('\0'),
  'a first fence without a second': () => filled('--- x\n', '---\n'),
  'quote marks on one line': () => filled('> '),
  'quote marks without blanks': () => filled('>'),
  'deep quotes that go on lazily': () => halves('>', 'a\n'),
  'deep quotes and empty quotes': () => halves('> ', '>\n'),
  'list markers on one line': () => filled('- '),
  'list markers before words': () => filled('* ', '', 'a'),
  'markers of thematic breaks': () => filled('* ', 'a\n* a ', '\n'),
  'numbers on one line': () => filled('1. '),
  'long numbers': () => filled('1234567890'),
  'deep lists and blank lines': () => halves('- ', '\n'),
  'deep lists and lazy lines': () => halves('- ', 'a\n'),
  'deep lists, then one indented line': () => halves('- ', ' '),
  'deep lists in quotes, and quote marks': () => halves('> - ', '>\n'),
  'items that nest step by step': () => {
    let text = '';
    for (let depth = 0; text.length < length; depth += 1) text += `${' '.repeat(2 * depth)}- #a\n`;
    return text;
  },
  tabs: () => filled('\t', '- a\n'),
  'lines of blanks': () => filled(`${' '.repeat(1000)}\n`, '- a\n'),
  'ATX marks': () => filled('# '),
  'many ATX marks': () => filled('#'),
  'headings with closing marks': () => filled('# # # # #\n'),
  'underlines of headings': () => filled('a\n=\n'),
  'fences that open and close': () => filled('```\n'),
  'a fence with marks in its words': () => filled('``` ` \n'),
  'a fence without an end': () => filled('a\n', '```\n'),
  'backticks that pair with none': () => filled(runs(), '#a\n'),
  'backticks of one length': () => filled('``a`', '#a\n', '\n#b'),
  'one long run of backticks': () => filled('`', '#a ', ' a\n#b'),
  'opening brackets': () => filled('[', '#a\n', '\n#b'),
  'closing brackets': () => filled(']', '#a [\n', '\n#b'),
  'brackets in brackets': () => `#a\n${halves('[', ']')}\n#b`,
  'brackets in brackets with a label': () => `[a]: /b\n\n#a\n${halves('[a', ']')}\n#b`,
  'images in images': () => `#a\n${halves('![', '](u)')}\n#b`,
  'images in images in a heading': () => `# ${halves('![', '](u)')}\n`,
  'links without an end': () => filled('[a](', '#a\n', '\n#b'),
  'links with deep parentheses': () => filled('[a](b(', '#a\n', '\n#b'),
  'links with an open angle': () => filled('[a](<b', '#a\n', '\n#b'),
  'links with an open title': () => filled('[a](b "', '#a\n', '\n#b'),
  'links with a title in parentheses that ends far away': () => filled('[a](b (', '#a\n', ')\n#b'),
  'such titles and blanks behind their end': () => `#a\n${halves('[](b (', ' ').replace('( ', '()')}x\n#b`,
  'references without a label': () => filled('[a][b', '#a\n', '\n#b'),
  'references with long labels': () => filled(`[a][${'b'.repeat(990)}`, '[x]: /y\n\n#a\n', '\n#b'),
  'references with tabs in long labels': () => filled(`[${'\t'.repeat(300)}b]`, '[x]: /y\n\n#a\n', '\n#b'),
  'escaped brackets': () => filled('\\[a\\]', '[x]: /y\n\n[#a\n', ']\n#b'),
  'brackets in code': () => filled('[`\\[`', '[x]: /y\n\n#a\n', ']\n#b'),
  definitions: () => filled('[a]: /b\n'),
  'definitions with titles over lines': () => filled('[a]: /b "\n'),
  'a definition without an end': () => filled('a\n', '[a]: /b "'),
  'a label without an end': () => filled('a\n', '['),
  'definitions whose title never ends': () => filled("[a]: /b\n'"),
  'opening angles': () => filled('<', '#a\n', '\n#b'),
  'tags without an end': () => filled('<a ', '#a\n', '\n#b'),
  'tags with attributes without an end': () => filled('<a b="c" d=\'e\' f=g ', '#a\n', '\n#b'),
  'tags with quotes that swallow the next': () => filled('<a b=" c=\' " d=" ', '#a\n', '\n#b'),
  'tags with other quotes': () => filled('<a b="\' c=\'" d=" ', '#a\n', '\n#b'),
  'one tag with many attributes': () => filled(' b', '#a\n<a', '\n#b'),
  'comments without an end': () => filled('<!-- ', '#a\n', '\n#b'),
  'comments that end at once': () => filled('<!-->', '#a\n', '\n#b'),
  'comments far from their end': () => filled('<!--a', '#a\n', '-->\n#b'),
  'instructions without an end': () => filled('<?a', '#a\n', '\n#b'),
  'declarations without an end': () => filled('<!a', '#a\n', '\n#b'),
  'sections without an end': () => filled('<![CDATA[', '#a\n', '\n#b'),
  'autolinks without an end': () => filled('<a:b', '#a\n', '\n#b'),
  'addresses without an end': () => filled('<a@b.', '#a\n', '\n#b'),
  'an HTML block without an end': () => filled('a\n', '<script>\n'),
  'HTML blocks of one line': () => filled('<div>\n\n'),
  'tags alone on lazy lines': () => filled('> a\n<b>\n'),
  'open tags on lazy lines': () => filled('> a\n<b c="\n'),
  'emphasis in a heading': () => filled('*a _b ', '# '),
  'delimiters in a heading': () => filled('*', '# '),
  'delimiters of changing lengths': () => filled('a**b*c***d', '# '),
  'closing delimiters': () => filled('a* b_ ', '# '),
  'references in a heading': () => filled('&amp;&#35;&x', '# '),
  'a heading of many lines': () => filled('a  \n', '', 'b\n='),
  escapes: () => filled('\\', '#a\n', '\n#b'),
};

/** Runs of one backtick, of two, and so on up to a thousand. */
function runs(): string {
  return Array.from({ length: 1000 }, (_, index) => `${'`'.repeat(index + 1)} `).join('');
}

describe('the steps of reading a text', () => {
  const counter = new StepCounter();
  before(() => counter.start());
  after(() => counter.stop());

  for (const [name, build] of Object.entries(texts))
    it(`are in proportion to its length: ${name}`, function () {
      this.timeout(600_000);
      const text = build();
      const steps = counter.count(() => scanLines(text));
      if (process.env.SCANNER_SHOWS) console.log((steps / text.length).toFixed(1).padStart(8), name);
      assert.ok(steps <= mostSteps * text.length, `${(steps / text.length).toFixed(1)} steps a character`);
      assert.ok(steps > 0);
    });
});

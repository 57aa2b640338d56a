import assert from 'node:assert/strict';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, it } from 'mocha';
import { findingCodes } from '../../src/training/finding';

const root = process.cwd();
const text = (path: string) => readFileSync(join(root, path), 'utf8');

interface Contributed {
  readonly command: string;
  readonly title?: string;
  readonly when?: string;
}
interface Setting {
  readonly type: string;
  readonly default: unknown;
  readonly markdownDescription: string;
}
interface View {
  readonly id: string;
  readonly name: string;
}
interface Manifest {
  readonly main: string;
  readonly browser: string;
  readonly icon: string;
  readonly engines: { readonly vscode: string };
  readonly activationEvents: readonly string[];
  readonly contributes: {
    readonly commands: readonly Contributed[];
    readonly menus: Readonly<Record<string, readonly Contributed[]>>;
    readonly views: Readonly<Record<string, readonly View[]>>;
    readonly viewsContainers: {
      readonly activitybar: readonly { readonly id: string; readonly icon: string }[];
    };
    readonly viewsWelcome: readonly {
      readonly view: string;
      readonly contents: string;
      readonly when?: string;
    }[];
    readonly configuration: readonly { readonly properties: Readonly<Record<string, Setting>> }[];
    readonly grammars: readonly { readonly path: string }[];
  };
}

const manifest: Manifest = JSON.parse(text('package.json'));
const words: Readonly<Record<string, string>> = JSON.parse(text('package.nls.json'));
const { commands, menus, views, viewsWelcome, configuration } = manifest.contributes;
const settings = Object.assign({}, ...configuration.map(({ properties }) => properties)) as Record<
  string,
  Setting
>;
const viewIds = Object.values(views).flatMap((list) => list.map(({ id }) => id));

/** A page of the guide without its examples. */
const guidePage = (path: string) => text(join('media/guide', path)).replace(/^```[\s\S]*?^```/gm, '');

/** All of the extension's source in one text. */
const source = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts'))
  .map((path) => text(join('src', path)))
  .join('\n');

/** `%key%`s of the manifest. */
const keysUsed = new Set([...text('package.json').matchAll(/%([\w.]+)%/g)].map(([, key]) => key ?? ''));

/** The string is in quotation marks somewhere, whole or without the prefix of all names. */
function isNamed(name: string): boolean {
  const short = name.replace(/^trainingJournal\./, '');
  return [name, short].some((one) => source.includes(`'${one}'`));
}

describe('the manifest', () => {
  it('has words for every key, and a use for all words', () => {
    assert.deepEqual(
      [...keysUsed].filter((key) => !words[key]),
      [],
    );
    assert.deepEqual(
      Object.keys(words).filter((key) => !keysUsed.has(key)),
      [],
    );
  });

  it('writes the titles of commands, views and settings as keys', () => {
    assert.deepEqual(
      commands.filter(({ title }) => !/^%command\.\w+%$/.test(title ?? '')),
      [],
    );
    for (const { name } of Object.values(views).flat()) assert.match(name, /^%view\.\w+%$/);
    for (const { markdownDescription } of Object.values(settings))
      assert.match(markdownDescription, /^%setting\.[\w.]+%$/);
  });

  it('begins the names of commands and settings alike', () => {
    for (const name of [...commands.map(({ command }) => command), ...Object.keys(settings), ...viewIds])
      assert.match(name, /^trainingJournal\.[a-z][A-Za-z.]*$/);
  });

  it('contributes only commands that the source registers', () => {
    assert.deepEqual(
      commands.map(({ command }) => command).filter((name) => !isNamed(name)),
      [],
    );
  });

  it('puts into menus and welcome texts only what it contributes', () => {
    const known = new Set([...commands.map(({ command }) => command), 'vscode.openFolder']);
    const inMenus = Object.values(menus).flatMap((items) => items.map(({ command }) => command));
    const inWords = Object.values(words).flatMap((word) =>
      [...word.matchAll(/\(command:([\w.]+)/g)].map(([, name]) => name ?? ''),
    );
    assert.deepEqual(
      [...inMenus, ...inWords].filter((name) => !known.has(name)),
      [],
    );
    for (const { view } of viewsWelcome) assert.ok(viewIds.includes(view), view);
    const conditions = Object.values(menus).flatMap((items) => items.map(({ when }) => when ?? ''));
    for (const [, view] of conditions.join('\n').matchAll(/view == ([\w.]+)/g))
      assert.ok(viewIds.includes(view ?? ''), view);
  });

  it('names in conditions only what the source tells the editor', () => {
    const conditions = [
      ...Object.values(menus).flatMap((items) => items.map(({ when }) => when ?? '')),
      ...viewsWelcome.map(({ when }) => when ?? ''),
    ].join('\n');
    const keys = new Set([...conditions.matchAll(/\btrainingJournal\.\w+/g)].map(([key]) => key));
    assert.deepEqual(
      [...keys].filter((key) => !viewIds.includes(key) && !isNamed(key)),
      [],
    );
    const rows = new Set([...conditions.matchAll(/viewItem == ([\w.]+)/g)].map(([, kind]) => kind ?? ''));
    assert.ok(rows.size > 0);
    assert.deepEqual(
      [...rows].filter((kind) => !source.includes(`'${kind}'`)),
      [],
    );
  });

  it('describes every setting that is read, and reads every setting that it describes', () => {
    const read = text('src/editor/settings.ts');
    const names = [...read.matchAll(/settings\.get(?:<\w+>)?\('([\w.]+)'/g)].map(([, name]) => name ?? '');
    assert.ok(names.length > 0);
    assert.deepEqual(names.map((name) => `trainingJournal.${name}`).sort(), Object.keys(settings).sort());
  });

  it('starts the extension for Markdown, for a journal in the folder, and for pages that are kept', () => {
    assert.ok(manifest.activationEvents.includes('onLanguage:markdown'));
    assert.ok(manifest.activationEvents.includes('workspaceContains:**/journal.md'));
    const pages = [...source.matchAll(/new JournalPages<\w+(?:<\w+>)?>\('([\w.]+)'\)/g)].map(
      ([, page]) => page,
    );
    assert.equal(pages.length, [...source.matchAll(/new JournalPages\b/g)].length);
    assert.ok(pages.length > 0);
    for (const page of pages) assert.ok(manifest.activationEvents.includes(`onWebviewPanel:${page}`), page);
    assert.equal(manifest.activationEvents.includes('*'), false);
  });

  it('names only files that are there, or that the build makes', () => {
    const icons = manifest.contributes.viewsContainers.activitybar.map(({ icon }) => icon);
    const grammars = manifest.contributes.grammars.map(({ path }) => path);
    for (const path of [manifest.icon, ...icons, ...grammars]) assert.ok(existsSync(join(root, path)), path);
    assert.deepEqual([manifest.main, manifest.browser], ['./dist/extension.js', './dist/web/extension.js']);
  });

  it('asks for no newer editor than the types it is compiled against', () => {
    const types: { readonly version: string } = JSON.parse(text('node_modules/@types/vscode/package.json'));
    const [major, minor] = types.version.split('.');
    assert.equal(manifest.engines.vscode, `^${major}.${minor}.0`);
    assert.ok(Number(minor) <= 100);
  });
});

describe('the guide', () => {
  const pages = readdirSync(join(root, 'media/guide/findings')).sort();

  it('has a page for every code of a finding, and no other', () => {
    assert.deepEqual(pages, findingCodes.map((code) => `${code}.md`).sort());
  });

  it('leads to every page, and to none that is not there', () => {
    const guide = readdirSync(join(root, 'media/guide'), { recursive: true, encoding: 'utf8' })
      .map((path) => path.replaceAll('\\', '/'))
      .filter((path) => path.endsWith('.md'));
    const linked = new Set<string>();
    for (const page of guide) {
      for (const [, target = ''] of guidePage(page).matchAll(/\]\(([^)\s#]+)(?:#[^)]*)?\)/g)) {
        if (/^[a-z]+:/.test(target)) continue;
        const path = new URL(target, `guide:///${page}`).pathname.slice(1);
        assert.ok(existsSync(join(root, 'media/guide', path)), `${page} leads to ${target}`);
        linked.add(path);
      }
    }
    assert.deepEqual(
      guide.filter((page) => page !== 'README.md' && !linked.has(page)),
      [],
    );
  });

  it('names every setting of the manifest somewhere, and none that does not exist', () => {
    const whole = readdirSync(join(root, 'media/guide'), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.md'))
      .map(guidePage)
      .join('\n');
    const known = new Set([...Object.keys(settings), ...commands.map(({ command }) => command)]);
    const named = new Set([...whole.matchAll(/`(trainingJournal\.[\w.]+)`/g)].map(([, name]) => name ?? ''));
    assert.deepEqual(
      [...named].filter((name) => !known.has(name)),
      [],
    );
    assert.deepEqual(
      Object.keys(settings).filter((name) => !named.has(name)),
      [],
    );
  });

  it('names the kind of every quick fix, to which a key can be bound', () => {
    const makers = text('src/planning/remedies/index.ts');
    const names = [...makers.matchAll(/^ {2}'([a-z-]+)': \w+,$/gm)].map(([, name]) => name ?? '');
    assert.ok(names.length > 0);
    const page = text('media/guide/editor.md');
    assert.deepEqual(
      names.filter((name) => !page.includes(`\`${name}\``) && !page.includes(`training.${name}"`)),
      [],
    );
  });
});

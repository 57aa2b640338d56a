import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from '../../scripts/build.mjs';

/** Every script that ships, with its text. */
function scripts(): ReadonlyMap<string, string> {
  const files = readdirSync('dist', { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.js'))
    .map((entry) => join(entry.parentPath, entry.name));
  return new Map(files.map((file) => [file, readFileSync(file, 'utf8')]));
}

/** What stands in a script and what it matches, for a message that can be read. */
function found(pattern: RegExp): string[] {
  return [...scripts()].flatMap(([file, text]) =>
    [...text.matchAll(pattern)].map(([match]) => `${file}: ${match}`),
  );
}

describe('the scripts that ship', () => {
  before(async function () {
    this.timeout(120_000);
    await build();
  });

  it('call nothing that reaches a network', () => {
    assert.ok(scripts().size >= 4);
    const calls =
      /\b(?:fetch|importScripts)\(|\b(?:XMLHttpRequest|WebSocket|EventSource|RTCPeerConnection|sendBeacon)\b/g;
    assert.deepEqual(found(calls), []);
    const modules =
      /(?:require|import)\("(?:node:)?(?:https?|http2|net|tls|dns|dgram|child_process|worker_threads)"\)/g;
    assert.deepEqual(found(modules), []);
  });

  it('make no code out of text', () => assert.deepEqual(found(/\beval\(|\bFunction\(["'`]/g), []));

  it('use of the editor’s worker host nothing but the editor', () => {
    const web = readFileSync('dist/web/extension.js', 'utf8');
    const modules = [...web.matchAll(/require\("([^"]+)"\)/g)].map(([, name]) => name);
    assert.deepEqual([...new Set(modules)], ['vscode']);
  });

  it('come with the licence of every library that is in them', () => {
    const licences = readFileSync('dist/licences.txt', 'utf8');
    for (const name of ['chart.js', 'ical.js', 'mdast-util-from-markdown', 'temporal-polyfill', 'yaml'])
      assert.match(
        licences,
        new RegExp(`^${name.replace('.', '\\.')} \\d+\\.\\d+\\.\\d+\\nLicence: \\S`, 'm'),
      );
    assert.match(licences, /Permission is hereby granted, free of charge/);
  });
});

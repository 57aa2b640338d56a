/**
 * Loading and activating the extension as it ships, with no journal open: in a process of its own each time, with a
 * stand-in for the editor that answers at once. What the editor itself takes for it is not measured.
 */
import { spawnSync } from 'node:child_process';
import Module, { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { summarize } from './measure';
import { printRow, withSpread } from './table';

/** Answers every question with something that can be asked, called and made anew again. */
function standIn(answers: Readonly<Record<string, unknown>>): unknown {
  const any: unknown = new Proxy(class {}, {
    get: (target, key) => {
      if (key === 'prototype') return Reflect.get(target, key);
      if (key === Symbol.toPrimitive) return () => '';
      if (key === Symbol.iterator) return () => [].values();
      if (key === 'then') return undefined;
      return typeof key === 'string' && key in answers ? answers[key] : any;
    },
    set: () => true,
    // A bundle copies what a module owns and inherits the rest.
    getPrototypeOf: () => any as object,
    apply: () => any,
    construct: () => any as object,
  });
  return any;
}

async function activated(): Promise<number> {
  const answers = {
    workspaceFolders: [],
    textDocuments: [],
    all: [],
    visibleTextEditors: [],
    language: 'en',
  };
  const vscode = standIn(answers);
  const loader = Module as unknown as { _load: (name: string, ...rest: unknown[]) => unknown };
  const load = loader._load;
  loader._load = (name, ...rest) => (name === 'vscode' ? vscode : load(name, ...rest));
  const begin = performance.now();
  const extension = createRequire(import.meta.url)(resolve('dist/extension.js')) as {
    activate(context: unknown): unknown;
  };
  await extension.activate(standIn({ subscriptions: [], storageUri: undefined }));
  return performance.now() - begin;
}

if (process.argv[2] === 'once') {
  const milliseconds = await activated();
  console.log(`measured ${milliseconds}`);
  process.exit(0);
}
const runs = Array.from({ length: 15 }, () => {
  const { stdout, stderr } = spawnSync(process.execPath, [fileURLToPath(import.meta.url), 'once'], {
    encoding: 'utf8',
  });
  const found = /measured ([\d.]+)/.exec(stdout)?.[1];
  if (found === undefined) throw new Error(stderr);
  return Number(found);
});
printRow(
  'Loading and activating the extension with no journal open, the editor’s own part left out',
  'under 50 ms',
  withSpread(summarize(runs), ' ms'),
);

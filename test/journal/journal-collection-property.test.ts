import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { JournalCollection } from '../../src/journal/journal-collection';
import type { JournalUpdate } from '../../src/journal/journal-updates';
import { MemoryNoteSource } from '../../src/journal/sources/memory-note-source';
import { expectedJournals } from './expected-journals';
import { allOf } from './index-of';

const paths = [
  'journal.md',
  'goals.md',
  '2026-02-24.md',
  'heron/journal.md',
  'heron/2026-02-24.md',
  'heron/log/2026-02-25.md',
  'heron/log/journal.md',
  '.hidden/2026-02-25.md',
];

const texts = [
  '',
  '- [ ] #session skill 18:30\n',
  '- [x] #session skill moved:2026-02-25\n',
  '#goal split\n#metric gap\n',
  '- #measure split 9cm\n',
];

type Step =
  | { readonly do: 'write' | 'open'; readonly path: string; readonly text: string }
  | { readonly do: 'remove' | 'close'; readonly path: string }
  | { readonly do: 'load' | 'settle' };

const path = fc.constantFrom(...paths);
const text = fc.constantFrom(...texts);
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ do: fc.constant('write' as const), path, text }) },
  { weight: 3, arbitrary: fc.record({ do: fc.constant('open' as const), path, text }) },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant('remove' as const),
      path: fc.constantFrom(...paths, 'heron', 'heron/log'),
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('close' as const), path }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constantFrom('load' as const, 'settle' as const) }) },
);

describe('a collection after any course of events', () => {
  it('holds what a fresh one would read, open documents before the disk', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 30 }), async (steps) => {
        const source = new MemoryNoteSource();
        const collection = new JournalCollection(source);
        collection.watch((error) => assert.fail(String(error)));
        const disk = new Map<string, string>();
        const open = new Map<string, string>();
        /** The journals as a listener would know them that only hears what is told. */
        const heard = new Set<string>();
        collection.onChange((updates: readonly JournalUpdate[]) => {
          for (const { kind, journal } of updates) {
            if (kind === 'added') heard.add(journal.root);
            if (kind === 'removed') heard.delete(journal.root);
          }
        });
        for (const one of steps) {
          switch (one.do) {
            case 'write':
              source.write(one.path, one.text);
              disk.set(one.path, one.text);
              break;
            case 'remove':
              // A document without unsaved text closes with its file; only then is its end certain.
              await collection.settled();
              source.remove(one.path);
              for (const [path, text] of [...disk]) {
                if (path !== one.path && !path.startsWith(`${one.path}/`)) continue;
                if (open.get(path) === text) open.delete(path);
                disk.delete(path);
              }
              break;
            case 'open':
              collection.setOpenText(one.path, one.text);
              open.set(one.path, one.text);
              break;
            case 'close':
              void collection.closeText(one.path);
              open.delete(one.path);
              break;
            case 'load':
              await collection.load();
              break;
            case 'settle':
              await collection.settled();
          }
        }
        await collection.load();
        await collection.settled();
        assert.deepEqual(collection.journals().map(allOf), expectedJournals(disk, open));
        assert.deepEqual(
          [...heard].sort(),
          collection
            .journals()
            .map(({ root }) => root)
            .sort(),
        );
      }),
      { seed: 2026, numRuns: 300 },
    );
  });
});

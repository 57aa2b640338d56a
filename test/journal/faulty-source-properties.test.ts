import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { JournalCollection } from '../../src/journal/journal-collection';
import { expectedJournals } from './expected-journals';
import { type Fault, FaultyNoteSource } from './faulty-note-source';
import { allOf } from './index-of';

const paths = ['journal.md', 'goals.md', '2026-02-24.md', 'heron/journal.md', 'heron/log/2026-02-25.md'];
const texts = [
  '',
  '- [ ] #session skill 18:30\n- #rest\n',
  '- [x] #session skill moved:2026-02-25\n',
  '#goal split\n#metric gap\n',
  '- #measure split 9cm\n',
];

type Step =
  | { readonly do: 'write' | 'open' | 'write quietly'; readonly path: string; readonly text: string }
  | { readonly do: 'remove' | 'remove quietly' | 'close'; readonly path: string }
  | { readonly do: 'break'; readonly faults: readonly Fault[] }
  | { readonly do: 'load' | 'wait' };

const path = fc.constantFrom(...paths);
const text = fc.constantFrom(...texts);
const faults = fc.array(
  fc.record({
    kind: fc.constantFrom<Fault['kind']>('none', 'error', 'nothing', 'part'),
    turns: fc.integer({ min: 0, max: 12 }),
  }),
  { minLength: 1, maxLength: 6 },
);
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({ do: fc.constantFrom('write' as const, 'write quietly' as const), path, text }),
  },
  { weight: 4, arbitrary: fc.record({ do: fc.constant('break' as const), faults }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('open' as const), path, text }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('close' as const), path }) },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constantFrom('remove' as const, 'remove quietly' as const),
      path: fc.constantFrom(...paths, 'heron'),
    }),
  },
  { weight: 3, arbitrary: fc.record({ do: fc.constantFrom('load' as const, 'wait' as const) }) },
);

function removeFrom(notes: Map<string, string>, path: string): void {
  for (const one of [...notes.keys()]) if (one === path || one.startsWith(`${path}/`)) notes.delete(one);
}

describe('a collection whose source answers late, wrongly, in part, or not at all', function () {
  this.timeout(300_000);
  it('holds what a fresh one would as soon as the source is well again, and lets no error escape', async () => {
    let failedLists = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 16 }), async (steps) => {
        const source = new FaultyNoteSource();
        const collection = new JournalCollection(source);
        const loads: Promise<unknown>[] = [];
        collection.watch(() => {
          failedLists += 1;
        });
        const load = () =>
          loads.push(
            collection.load().catch(() => {
              failedLists += 1;
            }),
          );
        const disk = new Map<string, string>();
        // Texts of open documents, each unlike any text of the disk: whether a document that shows just what its file
        // holds is still open when the file goes depends on when the file was read.
        const open = new Map<string, string>();
        for (const one of steps) {
          switch (one.do) {
            case 'write':
              source.write(one.path, one.text);
              disk.set(one.path, one.text);
              break;
            case 'write quietly':
              source.quietly(() => source.write(one.path, one.text));
              disk.set(one.path, one.text);
              break;
            case 'remove':
              source.remove(one.path);
              removeFrom(disk, one.path);
              break;
            case 'remove quietly':
              source.quietly(() => source.remove(one.path));
              removeFrom(disk, one.path);
              break;
            case 'open':
              collection.setOpenText(one.path, `${one.text}unsaved`);
              open.set(one.path, `${one.text}unsaved`);
              break;
            case 'close':
              void collection.closeText(one.path);
              open.delete(one.path);
              break;
            case 'break':
              source.break(one.faults);
              break;
            case 'load':
              load();
              break;
            case 'wait':
              await collection.settled();
          }
        }
        await Promise.all(loads);
        await collection.settled();
        source.break([]);
        await collection.load();
        await collection.settled();
        assert.deepEqual(collection.journals().map(allOf), expectedJournals(disk, open));
      }),
      { seed: 2026, numRuns: 10_000 },
    );
    assert.ok(failedLists > 100, `${failedLists} lists failed`);
  });
});

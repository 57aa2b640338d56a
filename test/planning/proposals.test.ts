// biome-ignore-all lint/suspicious/noTemplateCurlyInString: places to fill in of a snippet look like those of a template
import assert from 'node:assert/strict';
import { readNoteName } from '../../src/journal/note-name';
import { cursorContext } from '../../src/notation/cursor-context';
import type { Proposal } from '../../src/planning/proposals/proposal';
import { proposals } from '../../src/planning/proposals/proposals';
import { date, journalOf, type Notes } from './journal-of';

const journal: Notes = {
  'journal.md': '#athlete "Wren"\n#zone Europe/Lisbon\n',
  'goals.md': `# Low split
- #goal low-split by:2026-06-14 "Front split on the floor"
- #metric gap from:14cm to:0cm sides
- [ ] #step half-way |
- #need flexibility 2/week 75min 7/10 gap:48h routine:split-evening

# Handstand
- #goal handstand by:2026-05-01
- #metric hold from:12s to:45s
- #metric entries from:1/5 to:4/5
- #need skill 1/week 45min with:juno where:"old gym"

# Bridge, done
- [x] #goal bridge by:2025-12-01
`,
  'routines.md': `- #routine split-evening flexibility 75min regions:hamstrings,hips
- #routine press strength 40min regions:wrists
#kind hoop like:strength
#free thu 18:00-20:30 where:studio
#event 2026-04-18 "Studio evening" for:handstand
`,
  '2026-02-20.md':
    '- [x] #session flexibility 18:45 75min with:coach\n- [x] #session juggling with:juno,coach\n',
  '2026-02-24.md': `#measure low-split gap 9.5cm side:left
#measure low-split gap 10cm side:right
#measure handstand entries 3/5
#pain left-hip 4/10
#sore calves 2/10
`,
  '2026-02-27.md': '- [ ] #session strength 18:00\n',
};
const today = date('2026-02-26');

/** What is proposed at the `|` of `line`, which stands alone in the note of `path`. */
function all(line: string, path = '2026-02-26.md', notes = journal): readonly Proposal[] {
  const offset = line.indexOf('|');
  const text = line.replace('|', '');
  const context = cursorContext(text, offset);
  assert(context, `no tag at the cursor of ${line}`);
  const name = readNoteName(path);
  return proposals(
    {
      journal: journalOf({ ...notes, [path]: text }),
      today,
      note: path,
      ...(name.kind === 'day' ? { date: name.date } : {}),
    },
    context,
  );
}

function labels(line: string, path?: string): readonly string[] {
  return all(line, path).map((one) => one.label);
}

function textOf(line: string, label: string, path?: string): string | undefined {
  return all(line, path).find((one) => one.label === label)?.text;
}

describe('what can be written where the cursor stands', () => {
  it('begins with the tags that suit the note', () => {
    assert.deepEqual(labels('#|').slice(0, 5), ['#session', '#measure', '#sore', '#pain', '#win']);
    assert.deepEqual(labels('#|', 'goals.md').slice(0, 4), ['#goal', '#metric', '#step', '#need']);
    assert.deepEqual(labels('#|', 'journal.md').slice(0, 2), ['#athlete', '#zone']);
    assert.equal(labels('#|').length, 19);
  });

  it('gives a session the list marker and the box that it needs', () => {
    assert.equal(textOf('#|', '#session'), '- [ ] #session ');
    assert.equal(textOf('- #|', '#session'), '[ ] #session ');
    assert.equal(textOf('- [ ] #ses|', '#session'), '#session ');
    assert.equal(textOf('#|', '#sore'), '#sore ');
  });

  it('writes only the name of a tag whose fields stand there already', () => {
    assert.equal(textOf('- [ ] #se| flexibility 18:30', '#session'), '#session');
  });

  it('lays out the fields of a tag that plans, dates counted from today', () => {
    // 26 February and twelve weeks: 84 days later.
    assert.equal(textOf('- #|', '#goal', 'goals.md'), '#goal ${1:name} by:${2:2026-05-21} "${3:title}"');
  });

  it('offers whole sessions for the needs of open goals, the nearest first, and then kinds', () => {
    const found = all('- [ ] #session |');
    assert.deepEqual(
      found.slice(0, 2).map((one) => one.label),
      ['skill for:handstand', 'flexibility for:low-split'],
    );
    // The latest flexibility session of the last four weeks was at 18:45; a Thursday is free from 18:00.
    assert.equal(found[1]?.text, 'flexibility ${1:18:45} 75min 7/10 for:low-split routine:split-evening');
    assert.equal(found[0]?.text, 'skill ${1:18:00} 45min for:handstand with:juno where:"old gym"');
    const kinds = found.slice(2).map((one) => one.label);
    for (const kind of ['flexibility', 'strength', 'skill', 'conditioning', 'recovery', 'hoop', 'juggling']) {
      assert(kinds.includes(kind), kind);
    }
  });

  it('says of a kind whether it is built in, own, or only seen', () => {
    const origins = Object.fromEntries(
      all('- [ ] #session |').flatMap(({ label, subject }) =>
        subject.is === 'kind' ? [[label, subject.origin]] : [],
      ),
    );
    assert.equal(origins.flexibility, 'built-in');
    assert.equal(origins.hoop, 'own');
    assert.equal(origins.juggling, 'seen');
  });

  it('leaves the half-written word out of the names that were seen', () => {
    assert.equal(labels('- [ ] #session jug|').includes('jug'), false);
    assert.equal(labels('- [ ] #session skill with:c|').includes('c'), false);
  });

  it('offers goals, open ones and the nearest first, and not those already named', () => {
    assert.deepEqual(labels('- [ ] #session skill for:|'), ['handstand', 'low-split', 'bridge']);
    assert.deepEqual(labels('- [ ] #session skill for:handstand,|'), ['low-split', 'bridge']);
    assert.deepEqual(labels('#measure |').slice(0, 3), ['handstand', 'low-split', 'bridge']);
  });

  it('offers the metrics of the goal, and of a goal with one metric the reading at once', () => {
    assert.deepEqual(labels('#measure handstand |').slice(0, 2), ['hold', 'entries']);
    assert.deepEqual(labels('#measure low-split |').slice(0, 2), ['10cm', 'gap']);
  });

  it('starts a reading from the latest one, in its unit', () => {
    assert.equal(textOf('#measure low-split gap |', '10cm'), '${1:10}cm');
    assert.equal(textOf('#measure handstand entries |', '3/5'), '${1:3}/${2:5}');
    // Without a reading: from the first one of the metric.
    assert.equal(textOf('#measure handstand hold |', '12s'), '${1:12}s');
  });

  it('puts the unit behind a number that is being typed', () => {
    assert.equal(labels('#measure low-split gap 9|')[0], '9cm');
    assert.equal(labels('#measure low-split gap 9.|')[0], '9.0cm');
    assert.equal(labels('#measure low-split gap 8,5|')[0], '8,5cm');
  });

  it('asks for the side of a metric that has two, and for nothing where nothing is missing', () => {
    const asked = (line: string) =>
      all(line)
        .filter((one) => one.asked)
        .map((one) => one.label);
    assert.deepEqual(asked('#measure low-split gap 9cm |'), ['side:left', 'side:right']);
    assert.deepEqual(asked('#measure low-split gap 9cm side:left |'), []);
    assert.deepEqual(asked('#measure handstand hold 14s |'), []);
    assert.deepEqual(asked('- [ ] #session flexibility |'), []);
    assert.deepEqual(asked('#sore hips |'), ['4/10']);
  });

  it('offers the time, length and effort that such a session usually has, and the fields that are left', () => {
    const found = labels('- [ ] #session flexibility for:low-split |');
    for (const label of ['18:45', '18:00-20:30', '75min', '7/10', 'with:', 'skipped:', 'moved:']) {
      assert(found.includes(label), label);
    }
    assert.equal(found.includes('for:'), false);
    assert.equal(labels('- [ ] #session flexibility 18:30 |').includes('18:45'), false);
  });

  it('offers people and places seen before, names with a blank in quotation marks', () => {
    assert.deepEqual(labels('- [ ] #session skill with:|'), ['coach', 'juno']);
    assert.equal(textOf('- [ ] #session skill where:|', 'old gym'), '"old gym"');
    assert.equal(textOf('- [ ] #session skill where:"o|"', 'old gym'), 'old gym');
  });

  it('offers routines, those of the kind first, and reasons', () => {
    assert.deepEqual(labels('- [ ] #session strength routine:|'), ['press', 'split-evening']);
    assert.deepEqual(labels('- [ ] #session skill skipped:|'), [
      'sore',
      'tired',
      'ill',
      'injured',
      'work',
      'travel',
      'other',
    ]);
  });

  it('offers the days after the note for a move, with what stands there', () => {
    const found = all('- [ ] #session skill moved:|');
    assert.deepEqual(found.map((one) => one.label).slice(0, 3), ['2026-02-27', '2026-02-28', '2026-03-01']);
    assert.equal(found.length, 7);
    const first = found[0]?.subject;
    assert.deepEqual(first?.is === 'date' && [first.days, first.sessions], [1, ['strength']]);
  });

  it('offers coming events and whole weeks from today as dates to reach something by', () => {
    const found = all('- #goal spin by:|', 'more.md');
    assert.deepEqual(found.map((one) => one.label).slice(0, 3), ['2026-04-18', '2026-03-26', '2026-04-09']);
    const first = found[0]?.subject;
    assert.equal(first?.is === 'date' && first.events[0]?.name, 'Studio evening');
  });

  it('puts a region that hurts first', () => {
    const found = all('#pain |');
    assert.equal(found[0]?.label, 'left-hip');
    assert.deepEqual(found[0]?.subject, { is: 'region', openPain: true });
    for (const region of ['calves', 'hamstrings', 'wrists', 'shoulders']) {
      assert(
        found.some((one) => one.label === region),
        region,
      );
    }
    assert(labels('#pain left-hip |').includes('clear'));
  });

  it('offers the metrics of the goal around a step, and its target in the metric’s unit', () => {
    const line = '- #goal spin\n- #metric turns from:2reps to:10reps\n- [ ] #step five ';
    assert.deepEqual(labels(`${line}metric:|`, 'more.md'), ['turns']);
    assert.equal(textOf(`${line}to:|`, '10reps', 'more.md'), '${1:10}reps');
  });

  it('offers weekdays that are left, and then the hours', () => {
    assert.equal(labels('#free mon |').includes('monday'), false);
    assert.deepEqual(labels('#free mon |').slice(0, 1), ['18:00-20:30']);
    assert.deepEqual(labels('#free |').slice(0, 2), ['monday', 'tuesday']);
  });

  it('knows the zones of this machine', () => {
    assert(labels('#zone |').includes('Europe/Lisbon'));
  });

  it('works in an empty journal', () => {
    const source = { journal: journalOf({}), today, note: 'journal.md' };
    for (const line of ['#', '- [ ] #session ', '#measure ', '#measure x ', '#sore ', '#measure x y 9']) {
      const context = cursorContext(line, line.length);
      assert(context);
      assert.doesNotThrow(() => proposals(source, context), line);
    }
  });
});

import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { parseIsoWeek } from '../../src/notation/time/iso-week';
import {
  isSharingOff,
  NothingToShareError,
  partsOnOffer,
  type SharePart,
  type ShareSubject,
  shareNote,
  shareParts,
} from '../../src/planning/share-note';
import { date, journalOf, type Notes } from './journal-of';

const today = date('2026-02-27');
const week = parseIsoWeek('2026-W09');
assert.ok(week);

const subjects = {
  week: { is: 'week', week },
  month: { is: 'month', month: '2026-02' },
  goal: { is: 'goal', goal: 'low-split' },
  partner: { is: 'partner', partner: 'zzpartner' },
} as const satisfies Record<ShareSubject['is'], ShareSubject>;

function shared(notes: Notes, subject: ShareSubject, ...parts: readonly SharePart[]): string {
  return shareNote(journalOf(notes), { today, zone: 'UTC', subject, parts });
}

/** Private words, all beginning with zz, wherever an athlete can write one. */
const planted: Notes = {
  'journal.md': `---
mood: zzfrontmatter
---
# zzheading

zzprose

- #athlete "zzname"
- #zone Europe/Lisbon -- zzzone
- #kind zzkind like:skill -- zzkindremark
- #routine zzroutine flexibility 75min regions:zzroutineregion -- zzroutineremark
  - zzroutinebody
- #rule flexibility gap:24h -- zzrule
- #rule zzruleregion gap:72h
- #free mon tue 18:00-21:00 where:zzfreeplace with:zzfreepartner -- zzfree
- #busy 2026-02-28 -- zzbusy
- #event 2026-02-26 "zzevent" for:low-split -- zzeventremark
`,
  'zzgoalfile.md': `- #goal low-split by:2026-06-14 "Front split" -- zzgoalremark
- #why zzwhy
- #metric gap from:14cm to:0cm -- zzmetricremark
  - zzmetricbody
- [ ] #step ten by:2026-03-15 metric:gap to:10cm -- zzstepremark
  - zzstepbody
- #need flexibility 2/week 75min 7/10 with:zzneedpartner where:zzneedplace routine:zzroutine -- zzneedremark
`,
  '2026-02-24 zzfile.md': `---
weather: zzdayfrontmatter
---
zzdayprose

- [x] #session flexibility 18:30 75min 7/10 for:low-split with:zzpartner,zzother where:zzplace routine:zzroutine -- zzremark
  - zzbody
  - #sore zznestedsore 3/10
- [ ] #session strength 20:00 60min skipped:zzreason with:zzpartner -- zzskipremark
- #measure low-split gap 12cm photo:photos/zzphoto.jpg -- zzmeasureremark
  - zzmeasurebody
- #sore zzsore 4/10 -- zzsoreremark
- #pain zzpain 5/10 -- zzpainremark
- #win zzwin
- #zzunknown 2026-02-24
- [ ] #session skill 12:00 zzfield
`,
  '2026-02-27.md': '- [ ] #session skill 18:30 45min for:low-split\n',
};

/** The parts that have to be ticked, all of them, for a word to leave; words that are not here never do. */
const owners: Readonly<Record<string, readonly SharePart[]>> = {
  zzname: ['name'],
  zzreason: ['reasons'],
  zzpartner: ['partners'],
  zzother: ['partners'],
  zzplace: ['places'],
  zzremark: ['remarks'],
  zzskipremark: ['remarks'],
  zzmeasureremark: ['readings', 'remarks'],
  zzsoreremark: ['soreness', 'remarks'],
  zzpainremark: ['pain', 'remarks'],
  zzbody: ['exercises'],
  zzphoto: ['photos'],
  zznestedsore: ['soreness'],
  zzsore: ['soreness'],
  zzpain: ['pain'],
  zzwin: ['wins'],
  zzevent: ['events'],
  zzwhy: ['why'],
  zzfile: ['files'],
  zzgoalfile: ['files'],
};

/** Words that a subject has when all of it is ticked. */
const reached: Readonly<Record<ShareSubject['is'], readonly string[]>> = {
  week: Object.keys(owners).filter((word) => word !== 'zzgoalfile'),
  month: Object.keys(owners).filter((word) => word !== 'zzgoalfile'),
  goal: ['zzname', 'zzmeasureremark', 'zzphoto', 'zzevent', 'zzwhy', 'zzgoalfile'],
  partner: ['zzname', 'zzreason', 'zzother', 'zzplace', 'zzremark', 'zzskipremark', 'zzbody'],
};

function wordsIn(text: string): readonly string[] {
  return [...new Set(text.match(/zz\w+/g) ?? [])].sort();
}

describe('a share note', () => {
  it('holds of a week what was planned and kept, and no more', () => {
    const notes: Notes = {
      '2026-02-23.md': '- [x] #session flexibility 18:30 75min 7/10 with:juno -- hips level\n',
      '2026-02-24.md': '- [ ] #session strength 60min skipped:travel\n',
      '2026-02-25.md':
        '- [ ] #session skill 45min skipped:tired\n- [ ] #session conditioning moved:2026-02-28\n',
      '2026-02-28.md': '- [ ] #session conditioning 10:00 30min\n',
    };
    assert.equal(
      shared(notes, subjects.week),
      `# Training in the week 2026-W09

2026-02-23 to 2026-03-01.

## Sessions

Kept: 1 of 2 planned sessions. Called off and not counted: 1.

- Monday, 2026-02-23: 18:30 flexibility, 75 min, 7/10: kept
- Tuesday, 2026-02-24: strength, 60 min: not done
- Wednesday, 2026-02-25: skill, 45 min: not done
- Wednesday, 2026-02-25: conditioning: moved to 2026-02-28
- Saturday, 2026-02-28: 10:00 conditioning, 30 min: planned

As of 2026-02-27.
`,
    );
    const more = shared(notes, subjects.week, 'reasons', 'partners', 'remarks');
    assert.match(more, /75 min, 7\/10: kept\n {2}- With juno\n {2}- Remark: hips level\n/);
    assert.match(more, /not done \(travel\)/);
  });

  it('shows a month as marks that differ in shape, with what they mean', () => {
    const text = shared(
      {
        '2026-02-02.md': '- [x] #session skill 30min\n- [x] #session strength 30min\n',
        '2026-02-26.md': '- [ ] #session skill 30min\n',
        '2026-02-28.md': '- [ ] #session skill 30min\n',
      },
      subjects.month,
    );
    assert.match(text, /^\| Mon \| Tue \| Wed \| Thu \| Fri \| Sat \| Sun \|\n\|( --- \|){7}\n/m);
    assert.match(text, /^\| {2}\| {2}\| {2}\| {2}\| {2}\| {2}\| 1 \|$/m);
    assert.match(text, /^\| 2 ✓ ✓ \| 3 \|/m);
    assert.match(text, /^\| 23 \| 24 \| 25 \| 26 \? \| 27 \| 28 ○ \| {2}\|$/m);
    assert.match(text, /✓ kept, – not done, → moved, \? not marked, ○ planned/);
  });

  it('says of a goal where it stands', () => {
    const text = shared(
      {
        'goals.md':
          '- #goal low-split by:2026-06-14 "Front split"\n- #metric gap from:14cm to:0cm\n- [ ] #step ten by:2026-03-15 metric:gap to:10cm\n- #need flexibility 2/week\n',
        '2026-02-16.md': '- [x] #session flexibility 75min\n- #measure low-split gap 12cm\n',
        '2026-02-23.md': '- [ ] #session flexibility 75min skipped:tired\n- #measure low-split gap 11cm\n',
      },
      subjects.goal,
    );
    assert.equal(
      text,
      `# Front split

To be reached by 2026-06-14.

## Where it stands

Sessions done for it since 2026-01-26: 1.

- gap: 12 cm on 2026-02-16, 11 cm on 2026-02-23
  - Target: 0 cm
  - Not enough notes yet for a date: 2 of 5 days measured

## Steps

- ten (2026-03-15): still to come

As of 2026-02-27.
`,
    );
  });

  it('lists the sessions booked with one partner, those to come first', () => {
    const text = shared(
      {
        '2026-02-10.md': '- [x] #session skill 18:00 60min with:juno,coach\n',
        '2026-02-17.md': '- [ ] #session skill 18:00 60min skipped:ill with:juno\n',
        '2026-02-20.md':
          '- [ ] #session skill 18:00 60min with:juno\n- [x] #session skill 20:00 with:coach\n',
        '2026-03-03.md': '- [ ] #session skill 18:00 60min with:juno where:studio\n',
        '2025-10-03.md': '- [x] #session skill 18:00 60min with:juno\n',
      },
      { is: 'partner', partner: 'juno' },
    );
    assert.equal(
      text,
      `# Sessions with juno

## Next

- Tuesday, 2026-03-03: 18:00 skill, 60 min: planned

## Past

Kept together in the last 8 weeks: 1 of 2 planned sessions.

- Friday, 2026-02-20: 18:00 skill, 60 min: not marked
- Tuesday, 2026-02-17: 18:00 skill, 60 min: not done
- Tuesday, 2026-02-10: 18:00 skill, 60 min: kept

As of 2026-02-27.
`,
    );
    assert.match(
      shared({}, { is: 'partner', partner: 'juno' }),
      /No session is booked in the next 8 weeks\.[\s\S]*No session was planned together in the last 8 weeks\./,
    );
  });

  it('holds no private word unless something is ticked', () => {
    for (const subject of Object.values(subjects)) {
      const known = subject.is === 'partner' ? ['zzpartner'] : [];
      assert.deepEqual(wordsIn(shared(planted, subject)), known, subject.is);
    }
  });

  it('holds exactly the private words that are ticked, whatever is ticked', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.values(subjects)),
        fc.subarray([...shareParts]),
        (subject, parts) => {
          const known = subject.is === 'partner' ? ['zzpartner'] : [];
          const expected = reached[subject.is].filter((word) =>
            owners[word]?.every((part) => parts.includes(part)),
          );
          assert.deepEqual(
            wordsIn(shared(planted, subject, ...parts)),
            [...new Set([...known, ...expected])].sort(),
          );
        },
      ),
      { seed: 20260227, numRuns: 300 },
    );
  });

  it('shows the caution wherever pain is shared', () => {
    assert.match(shared(planted, subjects.week, 'pain'), /see a licensed health professional/);
    assert.doesNotMatch(shared(planted, subjects.week), /licensed/);
  });

  it('lets no word become a tag, a link or code', () => {
    const text = shared(
      {
        '2026-02-23.md':
          '- [x] #session skill -- #pain <b>x</b> [a](b) `c` | d ~~e~~ ![f](g)\n- #win #session skill 18:00\n',
      },
      subjects.week,
      'remarks',
      'wins',
    );
    assert.match(text, /Remark: \\#pain x \\\[a\\\]\(b\) \\`c\\` \\\| d \\~\\~e\\~\\~ \\!\\\[f\\\]\(g\)/);
    assert.match(text, /: \\#session skill 18:00/);
    const again = journalOf({ 'shared 2026-W09.md': text });
    assert.deepEqual(
      [...again.notes()].flatMap(({ reading }) => reading.entries),
      [],
    );
  });

  it('offers only what would add something', () => {
    const offer = (subject: ShareSubject, notes = planted) =>
      partsOnOffer(journalOf(notes), { today, zone: 'UTC', subject }).map(({ part }) => part);
    assert.deepEqual(offer(subjects.week, {}), []);
    assert.deepEqual(offer(subjects.week), [...shareParts]);
    assert.deepEqual(offer(subjects.goal), ['name', 'readings', 'events', 'why', 'photos', 'files']);
  });

  it('refuses a goal and a month that do not exist', () => {
    assert.throws(() => shared({}, { is: 'goal', goal: 'bridge' }), NothingToShareError);
    assert.throws(() => shared({}, { is: 'month', month: '2026-13' }), NothingToShareError);
  });

  it('is off in the journal of an athlete under 18', () => {
    const isOff = (notes: Notes) => isSharingOff(journalOf(notes).plan, date('2026-02-25'));
    assert.equal(isOff({ 'journal.md': '#athlete "Wren" minor\n' }), true);
    assert.equal(isOff(planted), false);
  });

  it('is on again once a guardian’s consent stands in the journal’s own note', () => {
    const isOff = (notes: Notes) => isSharingOff(journalOf(notes).plan, date('2026-02-25'));
    const consent = '#athlete "Wren" minor consent:2026-02-25 -- her mother, in writing\n';
    assert.equal(isOff({ 'journal.md': consent }), false);
    assert.equal(isOff({ 'journal.md': '#athlete "Wren" minor\n', 'own.md': consent }), true);
    assert.equal(isOff({ 'journal.md': consent.replace('25', '26') }), true);
    assert.equal(isOff({ 'journal.md': consent.replace('2026-02-25', 'yes') }), true);
  });

  it('never says when the athlete was born, nor who agreed', () => {
    const notes = {
      'journal.md': '#athlete "Wren" minor consent:2026-01-05 born:2012-05-03 -- her mother Ada\n',
      '2026-02-24.md': '- [x] #session skill 18:30 45min\n',
    };
    const text = shareNote(journalOf(notes), {
      today: date('2026-02-25'),
      zone: 'UTC',
      subject: subjects.week,
      parts: shareParts,
    });
    assert.match(text, /Wren/);
    assert.doesNotMatch(text, /2012|Ada|2026-01-05/);
  });
});

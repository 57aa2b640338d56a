import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { fillMessage } from '../../src/training/finding';
import { ageOn, guardianConsent } from '../../src/training/guardian-consent';
import { date } from './dates';
import { findingsIn, journalFromNotes, told } from './journal-from-text';

/** The Sunday of 2026-W09. */
const today = '2026-03-01';
const days = (count: number, line: string) =>
  Object.fromEntries(
    ['02-23', '02-24', '02-25', '02-26', '02-27', '02-28', '03-01']
      .slice(0, count)
      .map((day) => [`2026-${day}.md`, `${line}\n`]),
  );

describe('a guardian’s consent', () => {
  const consent = (journal: string, other: Readonly<Record<string, string>> = {}) =>
    guardianConsent(journalFromNotes({ 'journal.md': journal, ...other }).plan, date(today));

  it('is needed for an athlete under 18, and nobody else', () => {
    assert.equal(consent('#athlete "Wren"\n'), 'not needed');
    assert.equal(consent(''), 'not needed');
    assert.equal(consent('#athlete "Wren" minor\n'), 'missing');
    assert.equal(consent('#athlete "Wren"\n', { 'plan.md': '#athlete minor\n' }), 'missing');
  });

  it('is given with a date that is not ahead, in the journal’s own note, on the line of the name or one of its own', () => {
    assert.equal(consent('#athlete "Wren" minor consent:2026-03-01\n'), 'given');
    assert.equal(consent('#athlete "Wren" minor\n\n#athlete consent:2026-01-05 -- both parents\n'), 'given');
    assert.equal(consent('#athlete "Wren" minor consent:2026-03-02\n'), 'missing');
    assert.equal(
      consent('#athlete "Wren" minor\n', { 'plan.md': '#athlete "Wren" consent:2026-01-05\n' }),
      'missing',
    );
  });

  it('that cannot be read is told of on its characters, and counts as missing', () => {
    for (const [written, marked] of [
      ['consent:yes', 'yes'],
      ['consent:2026-02-30', '2026-02-30'],
      ['consent:', 'consent:'],
      ['consents:2026-01-05', 'consents'],
    ] as const) {
      const text = `#athlete "Wren" minor ${written}\n`;
      assert.equal(consent(text), 'missing', written);
      const found = findingsIn({ 'journal.md': text }, today).filter(
        ({ severity }) => severity !== 'information',
      );
      assert.deepEqual(
        found.map(({ range }) => text.slice(range.start, range.end)),
        [marked],
        written,
      );
    }
  });
});

describe('the age of an athlete', () => {
  it('changes on the birthday', () => {
    const age = (born: string, day: string) => ageOn(date(born), date(day));
    assert.deepEqual(
      [age('2012-05-03', '2026-05-02'), age('2012-05-03', '2026-05-03'), age('2012-05-03', '2027-01-01')],
      [13, 14, 14],
    );
    assert.deepEqual([age('2012-02-29', '2026-02-28'), age('2012-02-29', '2026-03-01')], [13, 14]);
  });
});

describe('the week of an athlete under 18', () => {
  const hours = (journal: string, notes: Readonly<Record<string, string>>) =>
    told('under-18-hours', { 'journal.md': journal, ...notes }, today);
  const rest = (journal: string, notes: Readonly<Record<string, string>>) =>
    told('under-18-rest', { 'journal.md': journal, ...notes }, today);

  // AOSSM: watch if weekly hours are more than the age in years, or above 16 h a week of hard training [R where quoted].
  it('is watched from more hours than years of age on, the day of birth being known', () => {
    const twelve = { ...days(6, '- [x] #session skill 16:00 2h 5/10') };
    assert.deepEqual(hours('#athlete minor born:2014-03-01\n', twelve), [
      '2026-02-28.md | information | #session skill 16:00 2h 5/10 | Week 2026-W09 holds 12 h of training at 11 years of age; with more hours a week than years, athletes under 18 are to be watched closely (AOSSM, read where it is quoted)',
    ]);
    assert.deepEqual(
      hours('#athlete minor born:2014-02-23\n', twelve),
      [],
      'twelve on the Monday of the week',
    );
    assert.deepEqual(hours('#athlete minor\n', twelve), [], 'the age is not guessed');
    assert.deepEqual(hours('#athlete born:2014-03-01\n', twelve), [], 'not said to be under 18');
  });

  it('is watched above 16 h of hard training, whatever the age', () => {
    const at = (line: string) => hours('#athlete minor\n', days(4, line));
    assert.equal(at('- [x] #session skill 10:00 4h 7/10').length, 0);
    assert.match(
      at('- [x] #session skill 10:00 4h05 7/10')[0] ?? '',
      /holds 16 h 20 min of hard training; above 16 h/,
    );
    assert.equal(at('- [x] #session skill 10:00 4h05 6/10').length, 0);
    assert.equal(at('- [ ] #session skill 10:00 5h 7/10 skipped:tired').length, 0);
  });

  // AAP (2000): at most 5 days a week in one sport, at least 1 day off [R, weak secondary].
  it('has at most five days of training; days of recovery and sessions left out are free', () => {
    const line = '- [x] #session skill 16:00 45min 4/10';
    assert.equal(rest('#athlete minor\n', days(5, line)).length, 0);
    assert.deepEqual(rest('#athlete minor\n', days(6, line)), [
      '2026-02-28.md | information | #session skill 16:00 45min 4/10 | Week 2026-W09 has training on 6 days; for athletes under 18 at most 5 days a week in one sport and at least one day off are asked for (AAP 2000, as reported)',
    ]);
    assert.equal(rest('#athlete "Wren"\n', days(7, line)).length, 0);
    const sixth = {
      ...days(5, line),
      '2026-02-28.md': '- [x] #session recovery\n- [ ] #session skill skipped:ill\n',
    };
    assert.equal(rest('#athlete minor\n', sixth).length, 0);
  });

  it('is told of photos only while no guardian has agreed', () => {
    const notes = { '2026-02-24.md': '- #measure low-split gap 9cm photo:"my photos/split.jpg"\n' };
    const photo = (journal: string) => told('under-18-photo', { 'journal.md': journal, ...notes }, today);
    assert.deepEqual(photo('#athlete minor\n'), [
      '2026-02-24.md | information | my photos/split.jpg | A photo of an athlete under 18: photos are off until a guardian has agreed, which journal.md says with a date behind consent:',
    ]);
    assert.deepEqual(photo('#athlete minor consent:2026-01-05\n'), []);
    assert.deepEqual(photo('#athlete "Wren"\n'), []);
  });

  it('is planned as ever: these cautions are no rules', () => {
    const found = findingsIn(
      { 'journal.md': '#athlete minor\n', ...days(6, '- [x] #session skill 16:00 45min 4/10') },
      today,
    );
    assert.deepEqual(
      found
        .filter(({ code }) => code.startsWith('under-18'))
        .map(({ severity, remedies }) => [severity, remedies]),
      [['information', []]],
    );
    assert.ok(found.every(({ message }) => fillMessage(message) !== ''));
  });
});

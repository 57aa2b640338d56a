import assert from 'node:assert/strict';
import { dayNumber } from '../../src/notation/time/iso-date';
import { weekReader } from '../../src/training/training-week';
import { date, week } from './dates';
import { journalFromNotes } from './journal-from-text';

/**
 * The sessions of 2026-W09, one line a day from Monday on, and the needs that each counts for: `goal kind`, `kind`
 * alone for a need of every week.
 */
function counted(plan: string, ...lines: readonly string[]): readonly (readonly string[])[] {
  const monday = dayNumber(date('2026-02-23'));
  const days = [
    '2026-02-23',
    '2026-02-24',
    '2026-02-25',
    '2026-02-26',
    '2026-02-27',
    '2026-02-28',
    '2026-03-01',
  ];
  const notes = lines.map((line, index) => [`${days[index]}.md`, line] as const);
  const journal = journalFromNotes({ 'plan.md': plan, ...Object.fromEntries(notes) });
  const read = weekReader(journal, date('2026-03-01'))(week('2026-W09'));
  assert.equal(read.monday, monday);
  return read.sessions.map((facts) =>
    facts.countsFor.map((need) => [need.goal, need.kind].filter((part) => part !== undefined).join(' ')),
  );
}

const bridgeAndSplit = [
  '- #goal bridge by:2026-09-30',
  '- #need flexibility 1/week',
  '- #goal low-split by:2026-06-14',
  '- #need flexibility 2/week',
].join('\n');

const flexibility = '- [x] #session flexibility';

describe('what a session counts for', () => {
  it('the needs of the goals that it names', () => {
    assert.deepEqual(
      counted(bridgeAndSplit, `${flexibility} for:bridge`, `${flexibility} for:low-split,bridge`),
      [['bridge flexibility'], ['low-split flexibility', 'bridge flexibility']],
    );
  });

  it('without for:, the first need of its kind that is still short, needs of the nearest goal first', () => {
    assert.deepEqual(counted(bridgeAndSplit, flexibility, flexibility, flexibility), [
      ['low-split flexibility'],
      ['low-split flexibility'],
      ['bridge flexibility'],
    ]);
  });

  it('without for:, what the sessions that name their goals leave, later ones too', () => {
    assert.deepEqual(counted(bridgeAndSplit, flexibility, flexibility, `${flexibility} for:low-split`), [
      ['low-split flexibility'],
      ['bridge flexibility'],
      ['low-split flexibility'],
    ]);
  });

  it('the first need of its kind once none is short', () => {
    assert.deepEqual(counted('- #need skill 1/week', '- [x] #session skill', '- [x] #session skill'), [
      ['skill'],
      ['skill'],
    ]);
  });

  it('nothing, where no need is of its kind', () => {
    assert.deepEqual(
      counted(bridgeAndSplit, '- [x] #session strength', '- [x] #session strength for:bridge'),
      [[], []],
    );
  });

  it('a goal without a date comes after those with one, and needs of every week last', () => {
    const plan = [
      '# Week',
      '- #need skill 1/week',
      '# Some day',
      '- #goal duo',
      '- #need skill 1/week',
      '# Soon',
      '- #goal handstand by:2027-01-01',
      '- #need skill 1/week',
    ].join('\n');
    assert.deepEqual(counted(plan, '- [x] #session skill', '- [x] #session skill', '- [x] #session skill'), [
      ['handstand skill'],
      ['duo skill'],
      ['skill'],
    ]);
  });

  it('only needs of goals that are open in the week, unless it names the goal', () => {
    const plan = '- #goal low-split by:2026-02-22\n- #need flexibility 2/week';
    assert.deepEqual(counted(plan, flexibility, `${flexibility} for:low-split`), [
      [],
      ['low-split flexibility'],
    ]);
    const closed = '- [x] #goal low-split by:2026-06-14\n- #need flexibility 2/week';
    assert.deepEqual(counted(closed, flexibility, `${flexibility} for:low-split`), [
      [],
      ['low-split flexibility'],
    ]);
  });

  it('a need of every week, when the goal that it names has none of its kind', () => {
    const plan =
      '# Goals\n- #goal low-split by:2026-06-14\n- #need flexibility 2/week\n# Week\n- #need strength 1/week';
    assert.deepEqual(counted(plan, '- [x] #session strength for:low-split'), [['strength']]);
  });

  it('an own kind counts as itself and as what it is like, however far', () => {
    const plan = '- #kind oversplits like:splits\n- #kind splits like:flexibility\n';
    assert.deepEqual(counted(`${plan}- #need flexibility 1/week`, '- [x] #session oversplits'), [
      ['flexibility'],
    ]);
    assert.deepEqual(counted(`${plan}- #need splits 1/week`, '- [x] #session oversplits'), [['splits']]);
    assert.deepEqual(counted(`${plan}- #need oversplits 1/week`, '- [x] #session flexibility'), [[]]);
  });

  it('kinds that are like each other end', () => {
    assert.deepEqual(counted('- #kind a like:b\n- #kind b like:a\n- #need b 1/week', '- [x] #session a'), [
      ['b'],
    ]);
  });

  describe('a need that names where:, with: or routine:', () => {
    for (const [need, session, counts] of [
      ['with:coach', '', true],
      ['with:coach', 'with:coach', true],
      ['with:coach', 'with:coach,partner', true],
      ['with:coach', 'with:partner', false],
      ['with:coach,partner', 'with:coach', false],
      ['', 'with:partner', true],
      ['where:studio', '', true],
      ['where:studio', 'where:studio', true],
      ['where:studio', 'where:park', false],
      ['routine:back-opening', '', true],
      ['routine:back-opening', 'routine:back-opening', true],
      ['routine:back-opening', 'routine:hips', false],
      ['with:coach where:studio', 'with:coach where:park', false],
    ] as const) {
      it(`${need || 'nothing'} is ${counts ? 'met' : 'not met'} by a session with ${session || 'nothing'}`, () => {
        const found = counted(`- #need skill 1/week ${need}`, `- [x] #session skill ${session}`);
        assert.deepEqual(found, [counts ? ['skill'] : []]);
      });
    }

    it('leaves a session that contradicts it to another need', () => {
      const plan = '- #need skill 1/week with:coach\n- #need skill 1/week';
      assert.deepEqual(
        counted(plan, '- [x] #session skill with:partner', '- [x] #session skill with:coach'),
        [['skill'], ['skill']],
      );
    });
  });

  it('needs in minutes are short until the minutes are there', () => {
    const plan =
      '- #goal low-split by:2026-06-14\n- #need flexibility 100min/week\n- #goal bridge by:2026-09-30\n- #need flexibility 1/week';
    assert.deepEqual(counted(plan, `${flexibility} 60min`, `${flexibility} 40min`, flexibility), [
      ['low-split flexibility'],
      ['low-split flexibility'],
      ['bridge flexibility'],
    ]);
  });

  it('sessions that are skipped or moved away count for nothing and leave room', () => {
    assert.deepEqual(
      counted(
        '- #need skill 1/week',
        '- [ ] #session skill skipped:ill',
        '- [ ] #session skill moved:2026-03-05',
        '- [x] #session skill',
      ),
      [[], [], ['skill']],
    );
  });
});

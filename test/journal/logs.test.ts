import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { day, indexOf } from './index-of';

const goals =
  '#goal split\n#metric gap from:14cm to:0cm sides\n\n#goal handstand\n#metric hold\n#metric entries\n';

describe('the readings of a goal', () => {
  it('come in order of day and place', () => {
    const journal = indexOf({
      'goals.md': goals,
      '2026-02-26.md': '- #measure split gap 9cm side:right cold\n',
      '2026-02-24.md':
        '- #measure split gap 9.5cm side:left warm\n- #measure handstand hold 20s\n- #measure split gap 9,7cm\n',
    });
    assert.deepEqual(
      journal
        .measurements('split')
        .map(({ date, metric, quantity, side, condition }) => [
          date,
          metric,
          quantity.value,
          side,
          condition,
        ]),
      [
        ['2026-02-24', 'gap', 9.5, 'left', 'warm'],
        ['2026-02-24', 'gap', 9.7, undefined, undefined],
        ['2026-02-26', 'gap', 9, 'right', 'cold'],
      ],
    );
    assert.equal(journal.measurements('handstand', 'hold').length, 1);
    assert.equal(journal.measurements('handstand', 'entries').length, 0);
    assert.equal(journal.measurements('bridge').length, 0);
    assert.equal(journal.measurementsBetween(day('2026-02-24'), day('2026-02-25')).length, 3);
  });

  it('belong to the only metric of their goal when they name none', () => {
    const notes = {
      '2026-02-24.md': '- #measure split 9cm\n- #measure handstand 20s\n- #measure bridge 20s\n',
    };
    const journal = indexOf({ ...notes, 'goals.md': goals });
    const metrics = () =>
      journal
        .measurementsBetween(day('2026-02-24'), day('2026-02-24'))
        .map(({ goal, metric }) => [goal, metric]);
    assert.deepEqual(metrics(), [
      ['split', 'gap'],
      ['handstand', undefined],
      ['bridge', undefined],
    ]);
    assert.equal(journal.measurements('split', 'gap').length, 1);
    journal.remove('goals.md');
    assert.deepEqual(metrics()[0], ['split', undefined]);
    assert.equal(journal.measurements('split', 'gap').length, 0);
  });

  it('count once where a copy of the note repeats them, and twice where one note does', () => {
    const text = '- #measure split gap 9cm\n- #measure split gap 9cm\n- #measure split gap 8cm\n';
    const journal = indexOf({
      '2026-02-24.md': text,
      '2026-02-24 (conflicted copy).md': `${text}- #measure split gap 7cm\n`,
      '2026-02-25.md': '- #measure split gap 9cm\n',
    });
    assert.deepEqual(
      journal.measurements('split').map(({ note, quantity }) => [note, quantity.value]),
      [
        ['2026-02-24.md', 9],
        ['2026-02-24.md', 9],
        ['2026-02-24.md', 8],
        ['2026-02-24 (conflicted copy).md', 7],
        ['2026-02-25.md', 9],
      ],
    );
  });

  it('need a goal, a number and a day', () => {
    const journal = indexOf({
      'goals.md': '- #measure split gap 9cm\n',
      '2026-02-24.md': '- #measure split gap\n- #measure 9cm\n',
    });
    assert.deepEqual(journal.measurementsBetween(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY), []);
  });
});

describe('soreness, pain and what went well', () => {
  const journal = indexOf({
    '2026-02-24.md': '- #sore hamstrings 3/10\n- #pain left-hip 4/10\n- #sore 3/10\n#win held it\n',
    '2026-02-24 (2).md': '- #sore hamstrings 3/10\n#win held it\n',
    '2026-02-26.md': '- #pain left-hip clear\n',
    'goals.md': '- #pain wrists 8/10\n#win nothing\n',
  });

  it('stand on their days', () => {
    assert.deepEqual(
      journal
        .bodyReports(day('2026-02-01'), day('2026-02-28'))
        .map(({ kind, date, region, rating, clear }) => [kind, date, region, rating, clear]),
      [
        ['sore', '2026-02-24', 'hamstrings', 3, false],
        ['pain', '2026-02-24', 'left-hip', 4, false],
        ['pain', '2026-02-26', 'left-hip', undefined, true],
      ],
    );
    assert.deepEqual(
      journal.wins(day('2026-02-01'), day('2026-02-28')).map(({ date, entry }) => [date, entry.words?.value]),
      [['2026-02-24', 'held it']],
    );
    assert.deepEqual(journal.bodyReports(day('2026-02-25'), day('2026-02-25')), []);
  });
});

describe('the names in a journal', () => {
  it('are counted wherever they are written, most used first', () => {
    const journal = indexOf({
      'plan.md':
        '#kind hoop like:strength\n#free monday 18:00-20:00 where:studio with:juno\n#routine legs flexibility regions:hips,back\n',
      '2026-02-24.md':
        '- [ ] #session flexibility with:coach,juno where:studio\n- [ ] #session hoop where:gym\n- #sore back 3/10\n',
    });
    assert.deepEqual(journal.names('with'), ['juno', 'coach']);
    assert.deepEqual(journal.names('where'), ['studio', 'gym']);
    assert.deepEqual(journal.names('region'), ['back', 'hips']);
    assert.deepEqual(journal.names('kind'), ['flexibility', 'hoop', 'strength']);
    journal.remove('2026-02-24.md');
    assert.deepEqual(journal.names('with'), ['juno']);
    assert.deepEqual(journal.names('region'), ['back', 'hips']);
    journal.remove('plan.md');
    assert.deepEqual(journal.names('kind'), []);
  });
});

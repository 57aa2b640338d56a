import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { addMeasurement, measurementLine } from '../../src/planning/measurement-change';
import { changed, date, journalOf } from './journal-of';

const day = '2026-02-24.md';

describe('adding a measurement', () => {
  it('writes goal, metric, reading, side, warm or cold and the photo', () => {
    assert.equal(
      measurementLine({
        goal: 'low-split',
        metric: 'gap',
        quantity: { value: 9.5, unit: 'cm' },
        side: 'left',
        condition: 'warm',
        photo: 'photos/left side.jpg',
      }),
      '- #measure low-split gap 9.5cm side:left warm photo:"photos/left side.jpg"',
    );
  });

  it('goes behind the day’s other readings', () => {
    const notes = { [day]: '- #measure low-split gap 10cm\n- [x] #session skill\n  - mounts\nWords.\n' };
    assert.deepEqual(
      changed(
        notes,
        addMeasurement(journalOf(notes), date('2026-02-24'), {
          goal: 'low-split',
          quantity: { value: 60, unit: '%', attempts: { successes: 3, of: 5 } },
        }),
      ),
      {
        [day]:
          '- #measure low-split gap 10cm\n- #measure low-split 3/5\n- [x] #session skill\n  - mounts\nWords.\n',
      },
    );
  });

  it('goes behind the last session when there is no reading yet, or into a new note', () => {
    const reading = { goal: 'hold', metric: 'time', quantity: { value: 20, unit: 's' } } as const;
    const notes = { [day]: '- [x] #session skill\r\n\r\nWords' };
    const journal = journalOf(notes);
    assert.deepEqual(changed(notes, addMeasurement(journal, date('2026-02-24'), reading)), {
      [day]: '- [x] #session skill\r\n- #measure hold time 20s\r\n\r\nWords',
    });
    assert.deepEqual(changed(notes, addMeasurement(journal, date('2026-02-25'), reading)), {
      '2026-02-25.md': '# Wednesday, 2026-02-25\r\n\r\n- #measure hold time 20s\r\n',
    });
  });
});

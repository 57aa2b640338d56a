import assert from 'node:assert/strict';
import { cut, only, problemsOf } from './reading';

describe('#session', () => {
  it('reads every field, in the order of the notation', () => {
    const text =
      '- [ ] #session flexibility 18:30 75min 7/10 for:low-split,shoulders with:coach where:studio routine:hips -- keep the hips level';
    const session = only('session', text);
    assert.equal(session.kind?.value, 'flexibility');
    assert.deepEqual(session.span?.value, { start: 1110 });
    assert.equal(session.length?.value.minutes, 75);
    assert.equal(session.rating?.value, 7);
    assert.deepEqual(
      session.for.map((one) => one.value),
      ['low-split', 'shoulders'],
    );
    assert.deepEqual(
      session.with.map((one) => one.value),
      ['coach'],
    );
    assert.equal(session.where?.value, 'studio');
    assert.equal(session.routine?.value, 'hips');
    assert.equal(session.remark?.value, 'keep the hips level');
    assert.equal(session.task?.checked, false);
    assert.deepEqual(problemsOf(text), []);
  });

  it('knows the exact characters of each field', () => {
    const text = '* [x] #session skill 18:30-19:45 for:hoop,show moved:2026-02-26 — tired';
    const session = only('session', text);
    assert.equal(cut(text, session.nameRange), '#session');
    assert.equal(cut(text, session.range), text.slice(6));
    assert.equal(cut(text, session.itemRange), text);
    assert.equal(cut(text, session.kind?.range), 'skill');
    assert.equal(cut(text, session.span?.range), '18:30-19:45');
    assert.deepEqual(
      session.for.map((one) => cut(text, one.range)),
      ['hoop', 'show'],
    );
    assert.equal(cut(text, session.moved?.range), '2026-02-26');
    assert.equal(cut(text, session.remark?.range), 'tired');
    assert.equal(cut(text, session.task?.range), 'x');
    assert.equal(text.slice(0, session.fieldsEnd), text.slice(0, text.indexOf(' —')));
  });

  it('takes its fields in any order', () => {
    const session = only('session', '- [ ] #session for:low-split 7/10 75min 18:30 flexibility');
    assert.equal(session.kind?.value, 'flexibility');
    assert.equal(session.length?.value.minutes, 75);
    assert.deepEqual(
      session.for.map((one) => one.value),
      ['low-split'],
    );
  });

  it('may stand without a box, in a plain line', () => {
    const session = only('session', 'Today: nothing\n\n#session strength 7/10\n');
    assert.equal(session.task, undefined);
    assert.equal(session.kind?.value, 'strength');
  });

  it('reads words of any script', () => {
    const session = only('session', '- [ ] #session гибкость for:вис-на-плечах where:"старый зал"');
    assert.equal(session.kind?.value, 'гибкость');
    assert.equal(session.for[0]?.value, 'вис-на-плечах');
    assert.equal(session.where?.value, 'старый зал');
  });

  it('reads a decimal comma in a rating', () =>
    assert.equal(only('session', '#session skill 7,5/10').rating?.value, 7.5));

  it('holds what is nested under its list item as its body', () => {
    const text =
      '- [ ] #session strength\n\n  Warm-up\n  - pull-ups 3 x 5\n\n    ```\n    #session no\n    ```\n- other\n';
    const session = only('session', text);
    assert.equal(
      cut(text, session.body?.range),
      '\n  Warm-up\n  - pull-ups 3 x 5\n\n    ```\n    #session no\n    ```',
    );
  });

  it('has no body when nothing is nested', () => {
    assert.equal(only('session', '- [ ] #session strength\n- other').body, undefined);
    assert.equal(only('session', '#session strength\nmore words').body, undefined);
  });

  it('does not read a comment on its line', () => {
    const session = only(
      'session',
      '- [ ] #session skill <!-- 9/10 with:secret --> 7/10 -- calm <!-- sad --> day',
    );
    assert.equal(session.rating?.value, 7);
    assert.deepEqual(session.with, []);
    assert.equal(session.remark?.value, 'calm day');
  });
});

describe('#measure', () => {
  it('reads goal, metric, quantity, side, condition and photo', () => {
    const measure = only(
      'measure',
      '- #measure low-split gap 9,5cm side:left cold photo:"photos/left side.jpg"',
    );
    assert.equal(measure.goal?.value, 'low-split');
    assert.equal(measure.metric?.value, 'gap');
    assert.deepEqual(measure.quantity?.value, { value: 9.5, unit: 'cm' });
    assert.equal(measure.side?.value, 'left');
    assert.equal(measure.condition?.value, 'cold');
    assert.equal(measure.photo?.value, 'photos/left side.jpg');
  });

  it('reads 3/5 as successes out of attempts', () =>
    assert.deepEqual(only('measure', '#measure handstand entries 3/5').quantity?.value.attempts, {
      successes: 3,
      of: 5,
    }));

  it('may leave the metric out', () =>
    assert.equal(only('measure', '#measure handstand 20s').metric, undefined));
});

describe('#sore and #pain', () => {
  it('read region and rating', () => {
    const sore = only('sore', '- #sore hips 6/10 -- after the hoop');
    assert.deepEqual(
      [sore.region?.value, sore.rating?.value, sore.remark?.value],
      ['hips', 6, 'after the hoop'],
    );
  });
  it('pain is over with the word clear', () => {
    assert.equal(only('pain', '#pain left-shoulder 0/10 clear').clear?.value, true);
    assert.equal(only('pain', '#pain left-shoulder 3/10').clear, undefined);
  });
});

describe('#win', () => {
  it('keeps all its words, dashes among them', () =>
    assert.equal(
      only('win', '#win held it -- 3/5 clean, finally — yes').words?.value,
      'held it -- 3/5 clean, finally — yes',
    ));
});

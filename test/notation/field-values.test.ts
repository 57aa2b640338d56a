import assert from 'node:assert/strict';
import { convert, formatQuantity, type Quantity, readQuantity, type Unit } from '../../src/notation/quantity';
import { readLength } from '../../src/notation/time/length-of-time';
import { formatTimeSpan, readTimeSpan } from '../../src/notation/time/wall-clock';

describe('a quantity', () => {
  const read: readonly (readonly [string, number, Unit])[] = [
    ['9.5cm', 9.5, 'cm'],
    ['9,5cm', 9.5, 'cm'],
    ['-2cm', -2, 'cm'],
    ['−2cm', -2, 'cm'],
    ['+2cm', 2, 'cm'],
    ['95mm', 95, 'mm'],
    ['1.2m', 1.2, 'm'],
    ['4in', 4, 'in'],
    ['142deg', 142, 'deg'],
    ['142°', 142, 'deg'],
    ['20s', 20, 's'],
    ['1.5min', 1.5, 'min'],
    ['12reps', 12, 'reps'],
    ['40kg', 40, 'kg'],
    ['88lb', 88, 'lb'],
    ['60%', 60, '%'],
  ];
  for (const [text, value, unit] of read)
    it(`${text} is ${value} ${unit}`, () => assert.deepEqual(readQuantity(text), { value, unit }));

  it('3/5 is 60 % that remembers its attempts', () =>
    assert.deepEqual(readQuantity('3/5'), { value: 60, unit: '%', attempts: { successes: 3, of: 5 } }));

  for (const text of ['9.5', 'cm', '9.5.1cm', '9 cm', '1e3cm', '5/3', '0/0', '9.5CM', '9.5cm2', '--2cm', ''])
    it(`${JSON.stringify(text)} is none`, () => assert.equal(readQuantity(text), undefined));

  // The inch is 25.4 mm and the pound 0.45359237 kg by the international agreement of 1959 (from memory).
  const conversions: readonly (readonly [string, Unit, number])[] = [
    ['1in', 'cm', 2.54],
    ['1in', 'mm', 25.4],
    ['2.54cm', 'in', 1],
    ['1m', 'cm', 100],
    ['15mm', 'cm', 1.5],
    ['100lb', 'kg', 45.359237],
    ['1kg', 'lb', 2.2046226218487757],
    ['1.5min', 's', 90],
    ['90s', 'min', 1.5],
    ['3/5', '%', 60],
    ['142°', 'deg', 142],
  ];
  for (const [text, unit, value] of conversions)
    it(`${text} is ${value} ${unit}`, () => {
      const converted = convert(readQuantity(text) as Quantity, unit);
      assert.ok(
        converted !== undefined && Math.abs(converted - value) < 1e-12 * Math.abs(value) + 1e-12,
        `${converted}`,
      );
    });

  it('cannot be turned into another dimension', () => {
    assert.equal(convert({ value: 1, unit: 'cm' }, 'deg'), undefined);
    assert.equal(convert({ value: 1, unit: 'kg' }, 's'), undefined);
    assert.equal(convert({ value: 1, unit: 'reps' }, '%'), undefined);
  });

  it('is written as it is read', () => {
    for (const [text] of read.filter(([one]) => /^-?\d+(\.\d+)?[a-z%]+$/.test(one)))
      assert.equal(formatQuantity(readQuantity(text) as Quantity), text);
    assert.equal(formatQuantity({ value: 60, unit: '%', attempts: { successes: 3, of: 5 } }), '3/5');
  });
});

describe('a time or a span', () => {
  it('18:30 has no end', () => assert.deepEqual(readTimeSpan('18:30'), { start: 1110 }));
  it('18:30-19:45 ends 75 minutes later', () =>
    assert.deepEqual(readTimeSpan('18:30-19:45'), { start: 1110, end: 1185 }));
  it('an en dash joins as well', () =>
    assert.deepEqual(readTimeSpan('18:30–19:45'), { start: 1110, end: 1185 }));
  it('8:05 needs no leading zero', () => assert.deepEqual(readTimeSpan('8:05'), { start: 485 }));
  it('23:15-00:30 ends on the next day', () =>
    assert.deepEqual(readTimeSpan('23:15-00:30'), { start: 1395, end: 1470 }));
  it('22:00-24:00 ends at midnight', () =>
    assert.deepEqual(readTimeSpan('22:00-24:00'), { start: 1320, end: 1440 }));
  for (const text of [
    '24:00',
    '25:00',
    '18:60',
    '18',
    '18:3',
    '18.30',
    '18:30-',
    '-18:30',
    '18:30-19:45-20:00',
  ])
    it(`${text} is none`, () => assert.equal(readTimeSpan(text), undefined));
  it('is written as it is read', () => {
    for (const text of ['18:30', '08:05-09:00', '23:15-00:30', '22:00-24:00']) {
      const span = readTimeSpan(text);
      assert.ok(span);
      assert.equal(formatTimeSpan(span), text);
    }
  });
});

describe('a length of time', () => {
  const read: readonly (readonly [string, number, string])[] = [
    ['75min', 75, 'min'],
    ['1h15', 75, 'h'],
    ['1h15min', 75, 'h'],
    ['1h05', 65, 'h'],
    ['1h', 60, 'h'],
    ['1.5h', 90, 'h'],
    ['1,5h', 90, 'h'],
    ['90s', 1.5, 's'],
    ['48h', 2880, 'h'],
    ['7d', 10080, 'd'],
  ];
  for (const [text, minutes, unit] of read)
    it(`${text} is ${minutes} minutes`, () => assert.deepEqual(readLength(text), { minutes, unit }));
  for (const text of ['75', '0min', '1h75', '-5min', '75 min', '2w', 'min', ''])
    it(`${JSON.stringify(text)} is none`, () => assert.equal(readLength(text), undefined));
});

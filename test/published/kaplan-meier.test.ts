// Checks of the product-limit estimate.
// Source: Freireich EJ et al (1963) Blood 21:699-716, 6-mercaptopurine arm [data M]; estimates and Greenwood standard
// errors recomputed [C].
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { kaplanMeier } from '../../src/training/statistics/kaplan-meier';
import { estimated } from './estimated';
import { printedRow } from './printed';

const weeks = '6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+';
const durations = weeks
  .split(' ')
  .map((text) => ({ time: Number.parseInt(text, 10), ended: !text.endsWith('+') }));

describe('published: Kaplan-Meier', () => {
  it('Freireich (1963): survival and standard errors [data M, C]', () => {
    const curve = estimated(kaplanMeier(durations));
    assert.equal(curve.n, 21);
    assert.equal(curve.ended, 9);
    assert.deepEqual(
      curve.steps.map(({ time }) => time),
      [6, 7, 10, 13, 16, 22, 23],
    );
    printedRow(
      curve.steps.map(({ survival }) => survival),
      '.8571 .8067 .7529 .6902 .6275 .5378 .4482',
    );
    printedRow(
      curve.steps.map(({ standardError }) => standardError),
      '.0764 .0869 .0963 .1068 .1141 .1282 .1346',
    );
  });
});

import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import {
  proposalToggled,
  reviewBegins,
  reviewRenewed,
  reviewStepped,
  sessionToggled,
  stepsOf,
} from '../../../src/planning/week-review-flow/review-progress';

describe('the steps of a review', () => {
  const all = stepsOf([1]);

  it('are three at the most, and two when nothing is proposed', () => {
    assert.deepEqual(all, ['facts', 'proposals', 'plan']);
    assert.deepEqual(stepsOf([]), ['facts', 'plan']);
  });

  it('go forth and back, and keep what was decided', () => {
    const taken = proposalToggled(reviewStepped(reviewBegins, all, 1), 'smaller');
    const plan = sessionToggled(reviewStepped(taken, all, 1), 'Monday');
    assert.deepEqual([plan.step, [...plan.taken], [...plan.unticked]], ['plan', ['smaller'], ['Monday']]);
    const back = reviewStepped(plan, all, -1);
    assert.deepEqual([back.step, [...back.taken]], ['proposals', ['smaller']]);
    assert.equal(reviewStepped(reviewBegins, all, -1).step, 'facts');
    assert.equal(reviewStepped(plan, all, 1).step, 'plan');
  });

  it('take nothing by themselves, and let a person leave again what they took', () => {
    assert.equal(reviewBegins.taken.size, 0);
    const twice = proposalToggled(proposalToggled(reviewBegins, 'gap'), 'gap');
    assert.equal(twice.taken.size, 0);
    assert.equal(sessionToggled(sessionToggled(reviewBegins, 'a'), 'a').unticked.size, 0);
  });

  it('forget a proposal that has gone, and the step when it was the last one', () => {
    const taken = proposalToggled(proposalToggled({ ...reviewBegins, step: 'proposals' }, 'gap'), 'move');
    assert.deepEqual([...reviewRenewed(taken, [{ id: 'move' }]).taken], ['move']);
    assert.deepEqual(reviewRenewed(taken, []).step, 'facts');
    assert.deepEqual(reviewRenewed({ ...taken, step: 'plan' }, []).step, 'plan');
  });
});

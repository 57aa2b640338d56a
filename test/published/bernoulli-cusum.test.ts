// Checks of the cumulative log-likelihood ratio for done and missed sessions.
// Sources of the method: Reynolds & Stoumbos (1999) J Qual Technol 31:87-108; Steiner et al (2000) Biostatistics
// 1:441-452 [M cites]. The numbers are recomputed [C].
import { describe, it } from 'mocha';
import { bernoulliCusum } from '../../src/training/statistics/bernoulli-cusum';
import { printed, printedRow } from './printed';

const done = [1, 1, 0, 1, 1, 1, 0, 0, 1, 0, 0, 1, 0, 0].map(Boolean);

describe('published: Bernoulli cumulative sum', () => {
  it('80 % against 50 %: done adds -0.470004, missed adds 0.916291 [C]', () => {
    const { scores } = bernoulliCusum([false, true], { usual: 0.8, dropped: 0.5 });
    printed(scores[0], '0.916291');
    printed((scores[1] ?? 0) - (scores[0] ?? 0), '-0.470004');
  });

  it('the sums of fourteen sessions [C]', () => {
    printedRow(
      bernoulliCusum(done, { usual: 0.8, dropped: 0.5 }).scores,
      '0 0 .9163 .4463 0 0 .9163 1.8326 1.3626 2.2789 3.1952 2.7252 3.6414 4.5577',
    );
  });
});

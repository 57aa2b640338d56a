// Checks of the named asymmetry equations, for left 100 and right 110.
// Sources: Bishop C et al (2018) Strength Cond J 40(4):1-6 [R: equations for unilateral and bilateral tests]; symmetry
// index as in BMC Sports Sci Med Rehabil s13102-021-00355-4 [R]; percent of the smaller, medicalalgorithms.com [R];
// symmetry angle, Zifchock RA et al (2008) Gait Posture 27:622-627 [abstract R, formula M]. Numbers recomputed [C].
import { describe, it } from 'mocha';
import { type AsymmetryEquation, asymmetry } from '../../src/training/statistics/asymmetry';
import { printed } from './printed';

describe('published: asymmetry', () => {
  it('left 100, right 110, by equation [C]', () => {
    const rows: readonly (readonly [AsymmetryEquation, string])[] = [
      ['percent-of-larger', '9.0909'],
      ['percent-of-total', '4.7619'],
      ['symmetry-index', '9.5238'],
      ['percent-of-smaller', '10.0'],
      ['symmetry-angle', '3.0292'],
      ['log-ratio', '9.5310'],
    ];
    for (const [equation, text] of rows) printed(asymmetry(100, 110, equation), text, equation);
  });

  it('the default is the one recommended for tests of one side at a time (Bishop 2018) [R]', () => {
    printed(asymmetry(100, 110), '9.0909');
    printed(asymmetry(110, 100), '9.0909');
  });

  it('the symmetry angle changes its sign with the side [C]', () => {
    printed(asymmetry(110, 100, 'symmetry-angle'), '-3.0292');
  });
});

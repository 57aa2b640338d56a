/**
 * Shown wherever pain is spoken of. Which signs it lists: general clinical advice, partly from memory; the guide's
 * page on cautions says which was read where.
 */
export const painCaution =
  'Sharp, sudden, one-sided or worsening pain, numbness, tingling, weakness, swelling, or pain at night or at rest: stop, and see a licensed health professional before you load that region again.';

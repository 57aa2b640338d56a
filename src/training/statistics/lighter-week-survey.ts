/**
 * How often and for how long strength and physique athletes train less on purpose, as they say themselves: 6.4 ± 1.7
 * days, every 5.6 ± 2.3 weeks, with less volume and effort and as many sessions. Practice, not proof.
 *
 * Source: Rogerson D et al (2024) Deloading Practices in Strength and Physique Sports: A Cross-sectional Survey. Sports
 * Med Open 10, n = 246. Borrowed here: nobody asked people who train flexibility or skills.
 */
export const LIGHTER_WEEK_SURVEY = {
  n: 246,
  days: { mean: 6.4, sd: 1.7 },
  everyWeeks: { mean: 5.6, sd: 2.3 },
} as const;

/** How much air is missing in front of a session. */

/**
 * Begun steps missing from the comfortable gap.
 * @param rule minutes of the comfortable gap, and of one step.
 * @param gap minutes since the end of the last session that counts; below 0 while it still runs.
 */
export function missingAir(
  rule: { readonly comfortable: number; readonly step: number },
  gap: number,
): number {
  return gap >= rule.comfortable ? 0 : Math.ceil((rule.comfortable - Math.max(gap, 0)) / rule.step);
}

import type { Finding } from '../../training/finding';
import type { CheckContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import { nothingHardFrom, returnCautions } from '../return-plan';
import { returnLimits } from '../return-plan/return-limits';
import { smallerWeekSize } from '../smaller-week';
import { blockOf } from '../week-review/review-due';
import type { ReviewedWeeks, ReviewProposal } from './review-proposal';

/** A return has two weeks at the least; here the first of them is asked for. */
const fewestWeeks = 2;

/** The first week of a return, after two weeks or more without a session. */
function returnProposals(context: CheckContext, { planned }: ReviewedWeeks): readonly ReviewProposal[] {
  const limits = returnLimits(context, fewestWeeks, planned);
  const [limit] = limits?.weeks ?? [];
  if (!limits?.break || !limit) return [];
  const { sessions, minutes, cutPercent } = limit;
  return [
    {
      id: 'return',
      subject: 'return',
      title: message(
        sessions === 1
          ? 'Come back in steps: 1 training session at the most, {1} % less than your fullest week'
          : 'Come back in steps: {0} training sessions at the most, {1} % less than your fullest week',
        sessions,
        cutPercent,
      ),
      why: message(
        '{0} days without a session. Borrowed: Caterisano and others, 2019; “Get Going Again in Steps” plans the weeks after',
        limits.break.days,
      ),
      cautions: returnCautions,
      effect: {
        does: 'limit',
        limit: {
          sessions,
          ...(minutes === undefined ? {} : { minutes }),
          allowsHard: cutPercent < nothingHardFrom,
        },
      },
    },
  ];
}

/** A smaller week, while sessions slip or in the weeks of a block in which many slow down. */
function smallerProposals(
  context: CheckContext,
  { planned }: ReviewedWeeks,
  slipping: Finding | undefined,
): readonly ReviewProposal[] {
  const block = blockOf(context);
  const why =
    slipping?.message ??
    (block?.reviewEarly
      ? message('Week {0} of the block: many slow down now (common practice, no source)', block.week)
      : undefined);
  const size = why && smallerWeekSize(context.journal, context.today, planned);
  if (!why || !size) return [];
  const { sessions, asked } = size;
  return [
    {
      id: 'smaller',
      subject: 'smaller',
      title: message(
        sessions === 1
          ? 'A smaller week: 1 training session in place of {1}'
          : 'A smaller week: {0} training sessions in place of {1}',
        sessions,
        asked,
      ),
      why,
      cautions: [],
      effect: { does: 'limit', limit: { sessions, allowsHard: true } },
    },
  ];
}

/**
 * A next week that holds less: the first of a return after a break, else a smaller one.
 * @param history what the whole journal shows
 */
export function sizeProposals(
  context: CheckContext,
  weeks: ReviewedWeeks,
  history: readonly Finding[],
): readonly ReviewProposal[] {
  const back = returnProposals(context, weeks);
  if (back.length > 0) return back;
  return smallerProposals(
    context,
    weeks,
    history.find(({ code }) => code === 'slipping'),
  );
}

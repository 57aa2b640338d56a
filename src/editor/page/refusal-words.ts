import type { NotEstimable, Shortfall } from '../../training/statistics/estimate';
import { type PageContext, say } from './page-context';

function shortInWords({ what, have, need }: Shortfall, context: PageContext): string {
  switch (what) {
    case 'days':
    case 'points':
      return say(context, '{0} of {1} days measured', have, need);
    case 'days-between-first-and-last':
      return say(context, '{0} of {1} days between the first and the last', have, need);
    case 'sessions':
      return say(context, '{0} of {1} sessions', have, need);
    case 'pairs':
      return say(context, '{0} of {1} pairs of sessions', have, need);
    case 'still-sore':
      return say(context, '{0} of {1} pairs that were still sore', have, need);
    case 'ready':
      return say(context, '{0} of {1} pairs that were not sore', have, need);
    case 'weeks':
      return say(context, '{0} of {1} weeks before', have, need);
    case 'known-days':
      return say(context, '{0} of {1} days with a known load', have, need);
    case 'known-days-in-a-row':
      return say(context, '{0} of {1} days in a row with a known load', have, need);
    case 'known-weeks':
      return say(context, '{0} of {1} weeks with a known load', have, need);
    default:
      return say(context, '{0} of {1}', have, need);
  }
}

function reasonInWords(reason: string, context: PageContext): string {
  switch (reason) {
    case 'too-many-ties':
    case 'no-variation':
      return say(context, 'too many readings are alike');
    case 'same-x':
      return say(context, 'all readings are of one day');
    case 'slope-may-be-zero':
      return say(context, 'the readings may as well stand still');
    case 'moving-away':
      return say(context, 'the readings move away from the target');
    case 'too-far-ahead':
      return say(context, 'more than ten years away');
    case 'no-target':
      return say(context, 'no target is set');
    case 'no-date':
      return say(context, 'no date is set');
    case 'date-passed':
      return say(context, 'the date has passed');
    case 'target-reached':
      return say(context, 'the target is reached');
    case 'no-load':
      return say(context, 'seven rest days');
    case 'unknown-loads':
      return say(context, 'a session has no rating or no length');
    case 'no-previous-load':
    case 'no-chronic-load':
      return say(context, 'no load in the weeks before');
    case 'hours-vary-little':
      return say(context, 'all gaps are nearly alike, so nothing can be told about others');
    case 'soreness-does-not-fall':
      return say(context, 'in these notes soreness does not fall with a longer gap');
    case 'usual-share-too-low':
      return say(context, 'the usual share is so low that a drop cannot be told from chance');
    default:
      return say(context, 'it cannot be worked out from these notes');
  }
}

/** Why a figure is not given: what is missing with how much there is, else the reason. */
export function refusalInWords(refused: NotEstimable, context: PageContext): string {
  const { missing, reason } = refused;
  if (missing.length === 0) return reasonInWords(reason, context);
  return say(
    context,
    'not enough notes yet ({0})',
    missing.map((short) => shortInWords(short, context)).join(', '),
  );
}

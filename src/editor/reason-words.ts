import { message } from '../training/wording';
import type { Words } from './words';

/** A reason for a skipped session; one that is not built in stays as it was written. */
export function reasonInWords(reason: string, { say }: Words): string {
  switch (reason) {
    case 'sore':
      return say(message('sore'));
    case 'tired':
      return say(message('tired'));
    case 'ill':
      return say(message('ill'));
    case 'injured':
      return say(message('injured'));
    case 'work':
      return say(message('work'));
    case 'travel':
      return say(message('travel'));
    case 'other':
      return say(message('other reasons'));
    default:
      return reason;
  }
}

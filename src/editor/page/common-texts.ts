import type { CommonTexts } from '../../pages/page-parts';
import { type PageContext, say } from './page-context';

/** Words that stand on every page. */
export function commonTexts(context: PageContext): CommonTexts {
  return {
    openReading: say(context, 'Open the note'),
    guide: say(context, 'What these figures mean'),
    caution: say(
      context,
      'This page is arithmetic on your own notes. It is not medical advice, and does not replace a qualified coach, physiotherapist or doctor.',
    ),
  };
}

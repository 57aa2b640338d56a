import type { LoadPageData, LoadPageState } from '../../pages/load-page-data';
import { DEFAULT_ACCEPTED_CHANCE } from '../../training/recovery/recovery-figures';
import { checkContext } from '../../training/week-under-check';
import { usableLanguage } from '../date-words';
import type { OpenJournal } from '../open-journal';
import { commonTexts } from '../page/common-texts';
import { type PageContext, say } from '../page/page-context';
import { isRecord } from '../page/read-message';
import type { Words } from '../words';
import { adherencePart } from './adherence-part';
import { loadPart } from './load-part';
import { recoveryPart } from './recovery-part';

/** What the page needs of a journal that is open. */
export type JournalOfLoadPage = Pick<OpenJournal, 'id' | 'title' | 'journal' | 'today' | 'zone'>;

/**
 * All that the page about load and recovery shows of a journal.
 * @param language BCP 47 tag of the editor's language.
 * @param acceptedChance The chance of "still sore" that the athlete accepts, inside 0..1.
 */
export function loadPageData(
  open: JournalOfLoadPage,
  words: Words,
  language: string,
  acceptedChance = DEFAULT_ACCEPTED_CHANCE,
): LoadPageData {
  const today = open.today();
  const context: PageContext = { words, today };
  const check = checkContext(open.journal, { today, zone: open.zone() });
  return {
    journal: open.id,
    title: say(context, 'Load and recovery: {0}', open.title),
    locale: usableLanguage(language),
    load: loadPart(check, context),
    recovery: recoveryPart(check, acceptedChance, context),
    adherence: adherencePart(check, context),
    texts: {
      ...commonTexts(context),
      subject: say(context, 'After sessions of'),
      sore: say(context, 'still sore'),
      ready: say(context, 'not sore'),
      curve: say(context, 'chance of still being sore'),
      curveBand: say(context, 'its interval (95 %)'),
      learned: say(context, 'the gap where it falls to the chance you accept, and its interval'),
      current: say(context, 'the gap kept now'),
      accepted: say(context, 'the chance you accept'),
      share: say(context, 'share done'),
      interval: say(context, 'its interval (95 %, Wilson)'),
    },
  };
}

/** Which journal a page that was kept showed. */
export function readLoadPageState(value: unknown): LoadPageState | undefined {
  return isRecord(value) && typeof value.journal === 'string' ? { journal: value.journal } : undefined;
}

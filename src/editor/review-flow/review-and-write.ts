import { applyChanges, StaleChangeError } from '../apply-changes';
import type { OpenJournal, OpenJournals } from '../open-journal';
import { tellOfNewPlan } from '../unfinished-changes';
import { type ConfirmedReview, pickReview, type ReviewList } from './review-picker';

/**
 * Walks through the review of a week, and writes what is confirmed at its end as one step that one undo takes back.
 * Whoever leaves before has changed nothing. Notes that have changed meanwhile are not written over: the list is shown
 * again, with what was decided.
 * @param createList The editor's own list when left out.
 * @returns what was written, when anything was
 */
export async function reviewAndWrite(
  journals: OpenJournals,
  journal: OpenJournal,
  createList?: () => ReviewList,
): Promise<ConfirmedReview | undefined> {
  let before: ConfirmedReview | undefined;
  for (;;) {
    const confirmed = await pickReview(
      { journals, journal, ...(before ? { progress: before.progress } : {}) },
      createList?.(),
    );
    if (!confirmed) return undefined;
    try {
      await applyChanges(journal, confirmed.changes);
      return confirmed;
    } catch (error) {
      if (!(error instanceof StaleChangeError)) throw error;
      before = confirmed;
      await tellOfNewPlan();
    }
  }
}

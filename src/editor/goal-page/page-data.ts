import type { GoalPageData, PageTexts } from '../../pages/goal-page-data';
import { goalProgress } from '../../training/goal-progress';
import { nearestFirst } from '../../training/open-needs';
import { goalFigures } from '../../training/progress/goal-figures';
import { weekReader } from '../../training/training-week';
import { usableLanguage } from '../date-words';
import type { OpenJournal } from '../open-journal';
import { commonTexts } from '../page/common-texts';
import { type PageContext, say } from '../page/page-context';
import type { Words } from '../words';
import { goalView } from './goal-view';

/** What the page needs of a journal that is open. */
export type JournalOfPage = Pick<OpenJournal, 'id' | 'title' | 'journal' | 'today'>;

function pageTexts(context: PageContext): PageTexts {
  return {
    goal: say(context, 'Goal'),
    allGoals: say(context, 'All goals'),
    showWhy: say(context, 'Show why'),
    hideWhy: say(context, 'Hide why'),
    copy: say(context, 'Copy as Markdown table'),
    openGoal: say(context, 'Open its note'),
    steps: say(context, 'Steps'),
    repeat: say(context, 'single readings of a day'),
    target: say(context, 'target'),
    openStep: say(context, 'step'),
    doneStep: say(context, 'step that is reached'),
    sessions: say(context, 'sessions done in a week'),
    loads: say(context, 'load of a week (effort x minutes)'),
    leastLoads: say(context, 'at least so much: a session has no rating or length'),
    line: say(context, 'line through the readings'),
    band: say(context, 'where the line may run (95 %)'),
    fan: say(context, 'where it leads at this pace (95 %)'),
    ...commonTexts(context),
  };
}

/** The goals of a journal in the order in which they are offered: open ones, the nearest first, then closed ones. */
export function goalsInOrder({ journal }: JournalOfPage) {
  const goals = nearestFirst(journal.plan.goals.values());
  return [...goals.filter((goal) => !goal.closed), ...goals.filter((goal) => goal.closed)];
}

/**
 * All that the goal page shows of a journal.
 * @param chosen The goal to show; any other text shows all of them.
 * @param language BCP 47 tag of the editor's language.
 */
export function goalPageData(
  open: JournalOfPage,
  chosen: string,
  words: Words,
  language: string,
): GoalPageData {
  const today = open.today();
  const context: PageContext = { words, today };
  const goals = goalsInOrder(open);
  const texts = pageTexts(context);
  const shown = goals.some((goal) => goal.id === chosen) ? goals.filter((goal) => goal.id === chosen) : goals;
  const weeks = weekReader(open.journal, today);
  return {
    journal: open.id,
    title: say(context, 'Goals: {0}', open.title),
    locale: usableLanguage(language),
    choices: [
      { goal: '', label: texts.allGoals },
      ...goals.map((goal) => ({ goal: goal.id, label: goal.title })),
    ],
    chosen: shown.length === 1 && shown[0]?.id === chosen ? chosen : '',
    goals: shown.flatMap(({ id }) => {
      const progress = goalProgress(open.journal, id, { today, weeks });
      const figures = goalFigures(open.journal, id, { today, weeks });
      return progress && figures ? [goalView(progress, figures, context)] : [];
    }),
    ...(goals.length === 0
      ? {
          notice: say(
            context,
            'There is no goal in this journal yet. Write one in any note: {0}',
            '- #goal low-split by:2026-06-14 "Front split on the floor"',
          ),
        }
      : {}),
    texts,
  };
}

import type { Goal } from '../../journal/journal';
import type { Unit } from '../../notation/quantity';
import { isoDate } from '../../notation/time/iso-date';
import { isoWeekOf, mondayOf } from '../../notation/time/iso-week';
import { figuresOfGoal } from '../../training/progress/goal-figures';
import type { MetricFigures, SeriesFigures } from '../../training/progress/metric-figures';
import type { StepFigures } from '../../training/progress/step-figures';
import { standingBetween } from '../../training/training-week';
import { message } from '../../training/wording';
import { type ListItem, plainText, type Section } from './markdown-text';
import { dayWords, remarkLines, type ShareContext } from './share-context';

/** Weeks before today whose sessions are counted. */
const recentWeeks = 4;

function amount(value: number, unit: Unit | undefined): string {
  const rounded = Number(value.toFixed(2));
  return unit === undefined ? String(rounded) : `${rounded} ${unit}`;
}

function seriesItem(
  { say }: ShareContext,
  metric: MetricFigures,
  series: SeriesFigures,
): readonly ListItem[] {
  const [first] = series.days;
  const latest = series.days.at(-1);
  if (!first || !latest) return [];
  const name = [metric.name, series.side, series.condition].flatMap((word) => word ?? []).join(' ');
  const { unit, target } = metric;
  const readings =
    first === latest
      ? message('{0}: {1} on {2}', name, amount(latest.value, unit), latest.date)
      : message(
          '{0}: {1} on {2}, {3} on {4}',
          name,
          amount(first.value, unit),
          first.date,
          amount(latest.value, unit),
          latest.date,
        );
  return [
    {
      text: say(readings),
      below: [
        ...(target === undefined ? [] : [say(message('Target: {0}', amount(target, unit)))]),
        ...(series.isMain ? [say(series.verdict.message)] : []),
      ],
    },
  ];
}

function stepItem({ say }: ShareContext, { id, state, by }: StepFigures): ListItem {
  const date = by === undefined ? '' : ` (${by})`;
  switch (state) {
    case 'done':
    case 'reached':
      return { text: say(message('{0}{1}: reached', id, date)) };
    case 'overdue':
      return { text: say(message('{0}{1}: still to come, its date is past', id, date)) };
    default:
      return { text: say(message('{0}{1}: still to come', id, date)) };
  }
}

/** Only what was done is told: of a session that was not, nothing may say which goal it was meant for. */
function doneParagraph({ check, say }: ShareContext, goal: Goal): string {
  const first = mondayOf(isoWeekOf(check.today)) - 7 * recentWeeks;
  const done = standingBetween(check.weeks, first, check.todayNumber).filter(
    ({ state, goals }) => state === 'done' && goals.includes(goal.id),
  );
  return say(message('Sessions done for it since {0}: {1}.', isoDate(first), done.length));
}

/** The readings one by one, up to today; photos with them, or alone. */
function readingItems(context: ShareContext, goal: Goal): readonly ListItem[] {
  const { check, parts, say } = context;
  return check.journal
    .measurements(goal.id)
    .filter(({ day }) => day <= check.todayNumber)
    .flatMap(({ date, metric, side, condition, quantity, entry }) => {
      const photo = parts.has('photos') && entry.photo ? [say(message('Photo: {0}', entry.photo.value))] : [];
      if (!parts.has('readings')) return photo.map((text) => ({ text: `${dayWords(date)}: ${text}` }));
      const what = [metric, side, condition].flatMap((word) => word ?? []).map(plainText);
      const value = amount(quantity.value, quantity.unit);
      return [
        {
          text: `${dayWords(date)}: ${what.join(' ')}: ${plainText(value)}`,
          below: [...remarkLines(context, entry), ...photo],
        },
      ];
    });
}

/** A goal: its measures and where they stand, its steps, and how many of its sessions were kept. */
export function goalSections(context: ShareContext, goal: Goal): readonly Section[] {
  const { check, parts, say } = context;
  const figures = figuresOfGoal(check.journal, goal, { today: check.today, weeks: check.weeks });
  const whys = parts.has('why')
    ? goal.whys.flatMap(({ words }) => (words ? [{ text: plainText(words.value) }] : []))
    : [];
  const events = parts.has('events')
    ? check.plan.events
        .filter(({ goals }) => goals.includes(goal.id))
        .map(({ date, name }) => ({ text: `${dayWords(date)}: ${plainText(name)}` }))
    : [];
  return [
    {
      heading: say(message('Where it stands')),
      paragraphs: [doneParagraph(context, goal)],
      items: figures.metrics.flatMap((metric) =>
        metric.series.flatMap((series) => seriesItem(context, metric, series)),
      ),
    },
    { heading: say(message('Steps')), items: figures.steps.map((step) => stepItem(context, step)) },
    {
      heading: parts.has('readings') ? say(message('Readings')) : say(message('Photos')),
      items: readingItems(context, goal),
    },
    { heading: say(message('Events')), items: events },
    { heading: say(message('Why')), items: whys },
    {
      heading: say(message('Notes')),
      items: parts.has('files') ? [{ text: plainText(goal.note) }] : [],
    },
  ];
}

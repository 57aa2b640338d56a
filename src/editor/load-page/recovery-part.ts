import type { GapChartView, LoadPageData, RecoveryView } from '../../pages/load-page-data';
import type { TableView } from '../../pages/page-parts';
import { type RecoveryFigures, recoveryFigures } from '../../training/recovery/recovery-figures';
import type { SessionPair } from '../../training/recovery/session-pairs';
import { sessionPlace } from '../../training/session-place';
import { chanceAt } from '../../training/statistics/logistic-model';
import type { CheckContext } from '../../training/week-under-check';
import { type PageContext, pagePlace, percentInWords, say } from '../page/page-context';
import { refusalInWords } from '../page/refusal-words';

/** Points of the curve that are drawn. */
const curvePoints = 40;

function hoursInWords(hours: number, context: PageContext): string {
  return say(context, '{0} h', context.words.number(hours, 0));
}

function sorenessInWords({ sore, skippedForSore, reports }: SessionPair, context: PageContext): string {
  if (!sore) return say(context, 'not sore');
  const told = reports.map(({ region, rating }) =>
    rating === undefined ? region : say(context, '{0} {1}/10', region, rating),
  );
  const all = [...(skippedForSore ? [say(context, 'skipped for being sore')] : []), ...told];
  return say(context, 'still sore: {0}', all.join(', '));
}

function gapInWords({ hours, countedIn }: SessionPair, context: PageContext): string {
  return countedIn === 'hours'
    ? hoursInWords(hours, context)
    : say(context, '{0} days (no time given)', context.words.number(hours / 24, 0));
}

function evidence(pairs: readonly SessionPair[], context: PageContext): TableView | undefined {
  if (pairs.length === 0) return undefined;
  return {
    caption: say(context, 'The sessions that this stands on ({0})', pairs.length),
    head: [
      say(context, 'Day'),
      say(context, 'Session'),
      say(context, 'Since the one before'),
      say(context, 'Load of the one before'),
      say(context, 'Soreness'),
    ],
    rows: [...pairs].reverse().map((pair) => ({
      place: pagePlace(sessionPlace(pair.second.session)),
      cells: [
        context.words.dates.day(pair.second.session.date, context.today),
        pair.second.session.kind,
        gapInWords(pair, context),
        pair.load === undefined ? say(context, 'unknown') : context.words.number(pair.load, 0),
        sorenessInWords(pair, context),
      ],
    })),
  };
}

function chartOf(figures: RecoveryFigures, accepted: number, context: PageContext): GapChartView | undefined {
  const { learned, pairs, current, subject } = figures;
  if (pairs.length === 0) return undefined;
  const estimated = learned.status === 'estimated' ? learned : undefined;
  const curve = estimated
    ? Array.from({ length: curvePoints + 1 }, (_, index) => {
        const { lower, upper } = estimated.observed;
        const hours = lower + ((upper - lower) * index) / curvePoints;
        const load = estimated.typicalLoad === undefined ? [] : [estimated.typicalLoad];
        const { chance, ...interval } = chanceAt(estimated.fit, [hours, ...load]);
        return { hours, chance, lower: interval.lower, upper: interval.upper };
      })
    : [];
  return {
    label: say(
      context,
      'Chart of {0}: hours between sessions against whether it was still sore, {1} pairs. The same stands in the table below.',
      subject.name,
      pairs.length,
    ),
    points: pairs.map((pair) => ({
      hours: pair.hours,
      sore: pair.sore,
      text: say(
        context,
        '{0}, {1}: {2}, {3}',
        pair.second.session.kind,
        context.words.dates.day(pair.second.session.date, context.today),
        gapInWords(pair, context),
        sorenessInWords(pair, context),
      ),
      place: pagePlace(sessionPlace(pair.second.session)),
    })),
    curve,
    accepted: { at: accepted, label: percentInWords(context, accepted) },
    ...(estimated
      ? {
          learned: {
            at: estimated.hours,
            label: hoursInWords(estimated.hours, context),
            lower: estimated.interval.lower,
            upper: estimated.interval.upper,
          },
        }
      : {}),
    ...(current ? { current: { at: current.hours, label: say(context, 'kept: {0} h', current.hours) } } : {}),
  };
}

function currentSentence({ current }: RecoveryFigures, context: PageContext): string {
  if (!current) return say(context, 'No gap is kept now.');
  switch (current.by) {
    case 'rule':
      return say(context, '{0} h are kept now, by your rule.', current.hours);
    case 'need':
      return say(context, '{0} h are kept now, by a need of a goal.', current.hours);
    default:
      return say(context, '{0} h are kept now: the rule that every journal starts with.', current.hours);
  }
}

function learnedSentences(figures: RecoveryFigures, context: PageContext): readonly string[] {
  const { learned, pairs, pairsInDays } = figures;
  const sore = pairs.filter((pair) => pair.sore).length;
  const counted = say(context, '{0} pairs of sessions, still sore in {1} of them', pairs.length, sore);
  const inDays =
    pairsInDays === 0
      ? []
      : [say(context, 'Counted in whole days, as a time is missing: {0} pairs.', pairsInDays)];
  if (learned.status === 'not-estimable') {
    return [
      say(context, 'No gap can be told: {0}. So far: {1}.', refusalInWords(learned, context), counted),
      ...inDays,
    ];
  }
  const { hours, interval, beyondObserved, acceptedChance, typicalLoad } = learned;
  return [
    say(
      context,
      'The chance of still being sore falls to {0} after about {1} (95 %: {2} to {3}), from {4}.',
      percentInWords(context, acceptedChance),
      hoursInWords(hours, context),
      hoursInWords(interval.lower, context),
      hoursInWords(interval.upper, context),
      counted,
    ),
    ...(beyondObserved === 'no'
      ? []
      : [
          beyondObserved === 'longer'
            ? say(context, 'That is longer than any gap in your notes: nothing was seen there.')
            : say(context, 'That is shorter than any gap in your notes: nothing was seen there.'),
        ]),
    ...(typicalLoad === undefined
      ? []
      : [
          say(
            context,
            'It holds after a session of load {0}, the median here.',
            context.words.number(typicalLoad, 0),
          ),
        ]),
    ...inDays,
  ];
}

function suggestionSentence({ suggestion, subject }: RecoveryFigures, context: PageContext) {
  if (!suggestion) return undefined;
  const rule = `#rule ${subject.name} gap:${suggestion.suggestedHours}h`;
  return suggestion.change === 'longer'
    ? say(
        context,
        'A longer gap may suit you better: {0} h. If you want it kept, write {1}',
        suggestion.suggestedHours,
        rule,
      )
    : say(
        context,
        'A shorter gap may do: {0} h. If you want it kept, write {1}',
        suggestion.suggestedHours,
        rule,
      );
}

function recoveryView(figures: RecoveryFigures, accepted: number, context: PageContext): RecoveryView {
  const { subject, pairs } = figures;
  const chart = chartOf(figures, accepted, context);
  const table = evidence(pairs, context);
  const suggestion = suggestionSentence(figures, context);
  return {
    key: `${subject.about}/${subject.name}`,
    name:
      subject.about === 'kind'
        ? say(context, '{0} (kind)', subject.name)
        : say(context, '{0} (region)', subject.name),
    sentences: [...learnedSentences(figures, context), currentSentence(figures, context)],
    ...(suggestion === undefined ? {} : { suggestion }),
    ...(chart ? { chart } : {}),
    ...(table ? { evidence: table } : {}),
  };
}

/** For each kind and region, gaps against soreness. Those with a suggestion come first, then those with most pairs. */
export function recoveryPart(
  check: CheckContext,
  accepted: number,
  context: PageContext,
): LoadPageData['recovery'] {
  const rank = ({ suggestion, learned }: RecoveryFigures): number =>
    suggestion ? 2 : learned.status === 'estimated' ? 1 : 0;
  const all = recoveryFigures(check, { acceptedChance: accepted })
    .filter(({ pairs }) => pairs.length > 0)
    .sort((one, other) => rank(other) - rank(one) || other.pairs.length - one.pairs.length);
  const title = say(context, 'Recovery');
  if (all.length === 0) {
    return {
      title,
      sentences: [],
      notice: say(
        context,
        'Not enough notes yet: two sessions of a kind before this week are needed, and what was sore: {0}',
        '#sore hamstrings 4/10',
      ),
      tables: [],
      subjects: [],
    };
  }
  return {
    title,
    sentences: [
      say(
        context,
        'How long after a session your notes still say sore, up to last Sunday. What goes together in your notes need not be the cause of anything, and soreness is not all of recovery.',
      ),
    ],
    tables: [],
    subjects: all.map((figures) => recoveryView(figures, accepted, context)),
  };
}

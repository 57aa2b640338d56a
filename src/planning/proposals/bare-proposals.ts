import type { Metric } from '../../journal/journal';
import type { FieldContext } from '../../notation/cursor-context';
import { formatTimeSpan } from '../../notation/time/wall-clock';
import { weekdayNames } from '../../notation/time/weekday-names';
import { nextDays } from './date-proposals';
import {
  goalProposals,
  kindProposals,
  metricProposals,
  regionProposals,
  subjectProposals,
} from './name-proposals';
import { blank, type Proposal, type ProposalSource, plain, snippet } from './proposal';
import { readingProposals } from './quantity-proposals';
import { newSessionProposals, sessionDetailProposals } from './session-proposals';

function asked(proposals: readonly Proposal[]): readonly Proposal[] {
  return proposals.map((one) => ({ ...one, asked: true, continues: true }));
}

function hasShape(context: FieldContext, shape: RegExp): boolean {
  return context.fields.some((one) => !one.name && shape.test(one.text));
}

const perWeek = snippet('2/week', `${blank(1, '2')}/week`, { is: 'value' }, { asked: true });
const minutes = snippet('60min', `${blank(1, '60')}min`, { is: 'value' });

function measureProposals(source: ProposalSource, context: FieldContext): readonly Proposal[] {
  const [goal, metric] = context.wordsBefore;
  if (goal === undefined) return asked(goalProposals(source));
  const metrics = source.journal.plan.goals.get(goal)?.metrics ?? [];
  const known: Metric | undefined =
    metric === undefined && metrics.length === 1 ? metrics[0] : metrics.find((one) => one.name === metric);
  const hasQuantity = hasShape(context, /^[-+−]?\d/);
  const hasSide = context.fields.some((one) => one.name?.value === 'side');
  const names = metric === undefined && !hasQuantity ? asked(metricProposals(source, goal)) : [];
  const readings = hasQuantity ? [] : readingProposals(source, context, known);
  const sides =
    known?.sides && hasQuantity && !hasSide
      ? ['left', 'right'].map((side) => plain(`side:${side}`, { is: 'side' }, { asked: true }))
      : [];
  return [...(metrics.length > 1 ? names : []), ...readings, ...(metrics.length > 1 ? [] : names), ...sides];
}

function reportProposals(source: ProposalSource, context: FieldContext): readonly Proposal[] {
  if (context.wordsBefore.length === 0) return asked(regionProposals(source));
  if (hasShape(context, /\//) || hasShape(context, /^clear$/)) return [];
  return [snippet('4/10', `${blank(1, '4')}/10`, { is: 'value' }, { asked: context.tag === 'sore' })];
}

function freeProposals(source: ProposalSource, context: FieldContext): readonly Proposal[] {
  const written = context.fields.filter((one) => !one.name).map((one) => one.text.toLowerCase());
  const left = weekdayNames.filter((day) => !written.some((one) => one === day || one === day.slice(0, 3)));
  const isFirst = left.length === weekdayNames.length;
  const days = left.map((day) => plain(day, { is: 'weekday' }, { asked: isFirst, continues: true }));
  if (isFirst) return days;
  if (hasShape(context, /^\d/)) return [];
  const usual = source.journal.plan.free.map(({ span }) => formatTimeSpan(span));
  const spans = [...new Set([...usual, '18:00-20:00'])].map((text) => {
    const [from = '', to = ''] = text.split('-');
    return snippet(text, `${blank(1, from)}-${blank(2, to)}`, { is: 'value' }, { asked: true });
  });
  return [...spans, ...days];
}

function zoneProposals(): readonly Proposal[] {
  return Intl.supportedValuesOf('timeZone').map((zone) => plain(zone, { is: 'zone' }, { asked: true }));
}

/** Words and numbers, without a name and a colon, that can stand where the cursor is. */
export function bareProposals(source: ProposalSource, context: FieldContext): readonly Proposal[] {
  const [first, second] = context.wordsBefore;
  switch (context.tag) {
    case 'session':
      return first === undefined
        ? newSessionProposals(source, context)
        : sessionDetailProposals(source, context);
    case 'measure':
      return measureProposals(source, context);
    case 'sore':
    case 'pain':
      return reportProposals(source, context);
    case 'need':
      if (first === undefined) return asked(kindProposals(source));
      return [
        ...(hasShape(context, /\/week$/) ? [] : [perWeek]),
        ...(hasShape(context, /^\d+(?:min|h\d*)$/) ? [] : [minutes]),
        ...(hasShape(context, /\/10$/) ? [] : [snippet('7/10', `${blank(1, '7')}/10`, { is: 'value' })]),
      ];
    case 'routine':
      if (first === undefined) return [];
      return [
        ...(second === undefined ? kindProposals(source) : []),
        ...(hasShape(context, /^\d+(?:min|h\d*)$/) ? [] : [minutes]),
      ];
    case 'rule':
      return first === undefined ? asked(subjectProposals(source)) : [];
    case 'free':
      return freeProposals(source, context);
    case 'busy':
      return hasShape(context, /^\d{4}-/) ? [] : asked(nextDays(source, 14));
    case 'event':
      if (!hasShape(context, /^\d{4}-/)) return asked(nextDays(source, 14));
      return context.fields.some((one) => one.quoted) || first !== undefined
        ? []
        : [snippet('"name"', `"${blank(1, 'name')}"`, { is: 'value' }, { asked: true })];
    case 'zone':
      return context.fields.length === 0 ? zoneProposals() : [];
    default:
      return [];
  }
}

import type { Need } from '../../journal/journal';
import { skipReasons } from '../../notation/skip-reasons';
import { dayNumber } from '../../notation/time/iso-date';
import { builtInKinds } from '../../training/kinds';
import { nearestFirst } from '../../training/open-needs';
import { openPains } from '../../training/open-pain';
import { type Proposal, type ProposalSource, plain } from './proposal';

/** Regions that nearly every journal speaks of; common practice, no source. The journal's own come first. */
const commonRegions = [
  'shoulders',
  'wrists',
  'elbows',
  'upper-back',
  'lower-back',
  'hips',
  'hip-flexors',
  'hamstrings',
  'knees',
  'ankles',
] as const;

/** The notation's kinds, the journal's own and those seen, most used first. */
export function kindProposals({ journal }: ProposalSource): readonly Proposal[] {
  const { kinds } = journal.plan;
  const names = new Set<string>([...journal.names('kind'), ...kinds.keys(), ...builtInKinds]);
  return [...names].map((name) => {
    const like = kinds.get(name);
    const builtIn = (builtInKinds as readonly string[]).includes(name);
    const origin = kinds.has(name) ? 'own' : builtIn ? 'built-in' : 'seen';
    return plain(name, { is: 'kind', origin, ...(like === undefined ? {} : { like }) });
  });
}

/** Goals, open ones first and the nearest of them at the top. */
export function goalProposals({ journal }: ProposalSource): readonly Proposal[] {
  const goals = nearestFirst(journal.plan.goals.values());
  return [...goals.filter((goal) => !goal.closed), ...goals.filter((goal) => goal.closed)].map((goal) =>
    plain(goal.id, { is: 'goal', goal }),
  );
}

/** The metrics of a goal. */
export function metricProposals({ journal }: ProposalSource, goal: string): readonly Proposal[] {
  const metrics = journal.plan.goals.get(goal)?.metrics ?? [];
  return metrics.map((metric) => plain(metric.name, { is: 'metric', metric }));
}

/** The journal's routines, those of `kind` first when it is given. */
export function routineProposals({ journal }: ProposalSource, kind?: string): readonly Proposal[] {
  const routines = [...journal.plan.routines.values()];
  const fitting = routines.filter((routine) => kind !== undefined && routine.kind === kind);
  const others = routines.filter((routine) => !fitting.includes(routine));
  return [...fitting, ...others].map((routine) => plain(routine.id, { is: 'routine', routine }));
}

/** Regions with open pain, then those seen, those of routines, and common ones. */
export function regionProposals(source: ProposalSource): readonly Proposal[] {
  const inPain = new Set(openPains(source.journal, dayNumber(source.today)).map((pain) => pain.region));
  const ofRoutines = [...source.journal.plan.routines.values()].flatMap((routine) => routine.regions);
  const names = new Set([...inPain, ...source.journal.names('region'), ...ofRoutines, ...commonRegions]);
  return [...names].map((name) => plain(name, { is: 'region', openPain: inPain.has(name) }));
}

/** A name as it is written in a field: in quotation marks when it holds a blank. */
function written(name: string, quoted: boolean): string {
  return /\s/.test(name) && !quoted ? `"${name}"` : name;
}

/** People seen before, most often first. */
export function partnerProposals({ journal }: ProposalSource, quoted: boolean): readonly Proposal[] {
  return journal.names('with').map((name) => plain(name, { is: 'partner' }, { text: written(name, quoted) }));
}

/** Places seen before, most often first. */
export function placeProposals({ journal }: ProposalSource, quoted: boolean): readonly Proposal[] {
  return journal.names('where').map((name) => plain(name, { is: 'place' }, { text: written(name, quoted) }));
}

/** Reasons for a skipped session. */
export function reasonProposals(): readonly Proposal[] {
  return skipReasons.map((reason) => plain(reason, { is: 'reason' }));
}

/** What a rule can be about: everything, hard sessions, rest days, kinds, goals, regions. */
export function subjectProposals(source: ProposalSource): readonly Proposal[] {
  const fixed = ['any', 'hard', 'rest-day'].map((name) => plain(name, { is: 'subject' }));
  return [...fixed, ...kindProposals(source), ...goalProposals(source), ...regionProposals(source)];
}

/** How a need reads as a field of a session: its named fields that the session takes over. */
export function fieldsOfNeed(need: Need): readonly string[] {
  return [
    ...(need.goal === undefined ? [] : [`for:${need.goal}`]),
    ...(need.with.length === 0
      ? []
      : [`with:${need.with.length === 1 ? written(need.with[0] ?? '', false) : need.with.join(',')}`]),
    ...(need.where === undefined ? [] : [`where:${written(need.where, false)}`]),
    ...(need.routine === undefined ? [] : [`routine:${need.routine}`]),
  ];
}

import {
  dateRangeValue,
  dateValue,
  freeValue,
  lengthValue,
  nameValue,
  perWeekValue,
  quantityValue,
  ratingValue,
  timeValue,
  weekdayValue,
  wordValue,
  zoneValue,
} from '../field-values';
import { present } from '../present';
import { type TagReader, withoutRemark } from './tag-reader';

export const readStep: TagReader<'step'> = ({ base }, fields) => {
  const step = {
    by: fields.named('by', dateValue),
    metric: fields.named('metric', wordValue),
    to: fields.named('to', quantityValue),
    id: fields.word(),
  };
  fields.require(step.id, 'low-split-8cm');
  return { ...base, tag: 'step', ...present(step) };
};

export const readMetric: TagReader<'metric'> = ({ base }, fields) => {
  const metric = {
    from: fields.named('from', quantityValue),
    to: fields.named('to', quantityValue),
    noise: fields.named('noise', quantityValue),
    sides: fields.flag('sides'),
    name: fields.word(),
  };
  fields.require(metric.name, 'gap');
  return { ...base, tag: 'metric', ...present(metric) };
};

export const readNeed: TagReader<'need'> = ({ base }, fields) => {
  const need = {
    perWeek: fields.bare(perWeekValue),
    length: fields.bare(lengthValue),
    rating: fields.bare(ratingValue),
    gap: fields.named('gap', lengthValue),
    max: fields.named('max', perWeekValue),
    where: fields.named('where', nameValue),
    routine: fields.named('routine', wordValue),
    kind: fields.word(),
  };
  const partners = fields.namedList('with', nameValue);
  fields.require(need.kind, 'flexibility');
  fields.require(need.perWeek, '2/week');
  return { ...base, tag: 'need', ...present(need), with: partners };
};

export const readRoutine: TagReader<'routine'> = ({ base }, fields) => {
  const regions = fields.namedList('regions', wordValue);
  const length = fields.bare(lengthValue);
  const routine = { id: fields.word(), kind: fields.word(), length };
  fields.require(routine.id, 'hip-opening');
  return { ...base, tag: 'routine', ...present(routine), regions };
};

export const readRule: TagReader<'rule'> = ({ base }, fields) => {
  const rule = {
    gap: fields.named('gap', lengthValue),
    min: fields.named('min', perWeekValue),
    max: fields.named('max', perWeekValue),
    cap: fields.named('cap', lengthValue),
    subject: fields.word(),
  };
  fields.require(rule.subject, 'flexibility');
  return { ...base, tag: 'rule', ...present(rule) };
};

export const readKind: TagReader<'kind'> = ({ base }, fields) => {
  const kind = { like: fields.named('like', wordValue), name: fields.word() };
  fields.require(kind.name, 'duo');
  return { ...base, tag: 'kind', ...present(kind) };
};

export const readFree: TagReader<'free'> = ({ base }, fields) => {
  const weekdays = fields.bareList(weekdayValue);
  const free = { span: fields.bare(timeValue), where: fields.named('where', nameValue) };
  const partners = fields.namedList('with', nameValue);
  fields.require(weekdays[0], 'monday');
  fields.require(free.span, '18:00-21:00');
  return { ...base, tag: 'free', weekdays, ...present(free), with: partners };
};

export const readBusy: TagReader<'busy'> = ({ base }, fields) => {
  const busy = { days: fields.bare(dateRangeValue), span: fields.bare(timeValue) };
  fields.require(busy.days, '2026-03-07');
  return { ...base, tag: 'busy', ...present(busy) };
};

export const readEvent: TagReader<'event'> = ({ base }, fields) => {
  const goals = fields.namedList('for', wordValue);
  const event = { date: fields.bare(dateValue), name: fields.quoted() ?? fields.word() };
  fields.require(event.date, '2026-05-30');
  fields.require(event.name, '"summer show"');
  return { ...base, tag: 'event', ...present(event), for: goals };
};

/** The table below the tag is read by the caller, which has the whole note. */
export const readBlock: TagReader<'block'> = ({ base }) => ({ ...base, tag: 'block' });

export const readAthlete: TagReader<'athlete'> = ({ base }, fields) => {
  const athlete = {
    consent: fields.named('consent', dateValue),
    born: fields.named('born', dateValue),
    minor: fields.flag('minor'),
    name: fields.quoted() ?? fields.word(),
  };
  return { ...base, tag: 'athlete', ...present(athlete) };
};

export const readZone: TagReader<'zone'> = ({ base }, fields) => {
  const zone = { zone: fields.bare(zoneValue) };
  fields.require(zone.zone, 'Europe/Lisbon');
  return { ...base, tag: 'zone', ...present(zone) };
};

export const readWhy: TagReader<'why'> = ({ base, rest }) => ({
  ...withoutRemark(base),
  tag: 'why',
  ...(rest.value === '' ? {} : { words: rest }),
});

export const readGoal: TagReader<'goal'> = ({ base }, fields) => {
  const goal = {
    by: fields.named('by', dateValue),
    from: fields.named('from', dateValue),
    title: fields.quoted() ?? fields.named('title', freeValue),
    id: fields.word(),
  };
  fields.require(goal.id, 'low-split');
  return { ...base, tag: 'goal', ...present(goal), scope: base.range };
};

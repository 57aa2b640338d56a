import {
  dateValue,
  freeValue,
  lengthValue,
  nameValue,
  quantityValue,
  ratingValue,
  sideValue,
  timeValue,
  wordValue,
} from '../field-values';
import { present } from '../present';
import type { Located } from '../source-range';
import { type TagReader, withoutRemark } from './tag-reader';

export const readSession: TagReader<'session'> = ({ base }, fields) => {
  const session = {
    span: fields.bare(timeValue),
    length: fields.bare(lengthValue),
    rating: fields.bare(ratingValue),
    where: fields.named('where', nameValue),
    routine: fields.named('routine', wordValue),
    skipped: fields.named('skipped', wordValue),
    moved: fields.named('moved', dateValue),
    kind: fields.word(),
  };
  const goals = fields.namedList('for', wordValue);
  const partners = fields.namedList('with', nameValue);
  fields.require(session.kind, 'flexibility');
  return { ...base, tag: 'session', ...present(session), for: goals, with: partners };
};

export const readMeasure: TagReader<'measure'> = ({ base }, fields) => {
  const warm = fields.flag('warm');
  const cold = warm ? undefined : fields.flag('cold');
  const condition: Located<'warm' | 'cold'> | undefined = warm
    ? { value: 'warm', range: warm.range }
    : cold && { value: 'cold', range: cold.range };
  const measure = {
    quantity: fields.bare(quantityValue),
    side: fields.named('side', sideValue),
    photo: fields.named('photo', freeValue),
    goal: fields.word(),
    metric: fields.word(),
    condition,
  };
  fields.require(measure.goal, 'low-split');
  fields.require(measure.quantity, '9.5cm');
  return { ...base, tag: 'measure', ...present(measure) };
};

export const readSore: TagReader<'sore'> = ({ base }, fields) => {
  const sore = { rating: fields.bare(ratingValue), region: fields.word() };
  fields.require(sore.region, 'hips');
  return { ...base, tag: 'sore', ...present(sore) };
};

export const readPain: TagReader<'pain'> = ({ base }, fields) => {
  const pain = { rating: fields.bare(ratingValue), clear: fields.flag('clear'), region: fields.word() };
  fields.require(pain.region, 'left-shoulder');
  return { ...base, tag: 'pain', ...present(pain) };
};

export const readWin: TagReader<'win'> = ({ base, rest }) => ({
  ...withoutRemark(base),
  tag: 'win',
  ...(rest.value === '' ? {} : { words: rest }),
});

import type { TagName } from '../entries';
import { readMeasure, readPain, readSession, readSore, readWin } from './logging-tags';
import {
  readAthlete,
  readBlock,
  readBusy,
  readEvent,
  readFree,
  readGoal,
  readKind,
  readMetric,
  readNeed,
  readRoutine,
  readRule,
  readStep,
  readWhy,
  readZone,
} from './planning-tags';
import type { TagReader } from './tag-reader';

/** How each tag's fields are read. */
export const tagReaders: { readonly [Tag in TagName]: TagReader<Tag> } = {
  goal: readGoal,
  why: readWhy,
  metric: readMetric,
  step: readStep,
  need: readNeed,
  routine: readRoutine,
  rule: readRule,
  kind: readKind,
  free: readFree,
  busy: readBusy,
  event: readEvent,
  block: readBlock,
  athlete: readAthlete,
  zone: readZone,
  session: readSession,
  measure: readMeasure,
  sore: readSore,
  pain: readPain,
  win: readWin,
};

/** Every tag of the notation, in the order of the guide. */
export const tagNames = Object.keys(tagReaders) as readonly TagName[];

/** Whether `name`, without its `#`, is a tag of the notation. */
export function isTagName(name: string): name is TagName {
  return Object.hasOwn(tagReaders, name);
}

import type { Entry } from '../../notation/entries';
import { message } from '../../training/wording';
import { addToDay } from '../day-note';
import type { Remedy, RemedyMaker } from './remedy';

const behindPainOrSessions: readonly ((entry: Entry) => boolean)[] = [
  (entry) => entry.tag === 'pain',
  (entry) => entry.tag === 'session',
];

/** Writes into today's note that the pain is over. Never the preferred way out: only the athlete knows. */
export const clearPain: RemedyMaker = function* ({ journal, finding, options }): Generator<Remedy> {
  const regions = String(finding.facts.regions ?? '')
    .split(', ')
    .filter((region) => region !== '');
  if (regions.length === 0) return;
  const lines = regions.map((region) => `- #pain ${region} 0/10 clear`);
  yield {
    name: 'clear-pain',
    title: message('Write down today that the pain is over: {0}', regions.join(', ')),
    changes: addToDay(journal, options.today, lines, behindPainOrSessions),
    preferred: false,
  };
};

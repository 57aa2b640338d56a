import type { Message } from '../../training/finding';
import { message } from '../../training/wording';

/** What leaves only when it is ticked by name. Everything that can tell of more than kept and planned sessions is one. */
export const shareParts = [
  'name',
  'reasons',
  'partners',
  'places',
  'readings',
  'wins',
  'events',
  'remarks',
  'exercises',
  'soreness',
  'pain',
  'why',
  'photos',
  'files',
] as const;

/** One thing that can be ticked. */
export type SharePart = (typeof shareParts)[number];

const titles: { readonly [Part in SharePart]: Message } = {
  name: message('Your name'),
  reasons: message('Why sessions were not done'),
  partners: message('Names of partners and coaches'),
  places: message('Places'),
  readings: message('Readings'),
  wins: message('What went well'),
  events: message('Events'),
  remarks: message('Remarks'),
  exercises: message('What stands beneath the sessions'),
  soreness: message('Soreness'),
  pain: message('Pain'),
  why: message('Your private reason'),
  photos: message('File names of photos'),
  files: message('File names of notes'),
};

/** The name under which a part is ticked. */
export function sharePartTitle(part: SharePart): Message {
  return titles[part];
}

import type { NotePath } from '../journal/note';
import { addDays, dayNumber, type IsoDate, isoWeekday } from '../notation/time/iso-date';
import { newDayNoteText } from './day-note';
import type { NoteChange } from './note-change';

/** What a starter journal is made from. */
export interface StarterJournalOptions {
  /** The journal's folder from the folder that its source reads; empty for that folder itself. */
  readonly root: NotePath;
  readonly today: IsoDate;
  /** The time zone of the journal's clock, when it is known. */
  readonly zone?: string;
  /** Whether a file stands at a path already; such a file is left alone. */
  readonly exists: (path: NotePath) => boolean;
}

function journalNote(zone: string | undefined): string {
  const clock = zone === undefined ? [] : [`- #zone ${zone}`];
  return [
    '# My training journal',
    '',
    'This note makes the folder a journal. Every line in these notes is yours: change it, move it, delete it.',
    '',
    '- #athlete "My name"',
    ...clock,
    '',
    '## Where things are',
    '',
    '- goals.md: what I train for, how it is measured, and what each week needs for it',
    '- routines.md: what is done in a session, from the warm-up on',
    '- rules.md: how far apart hard sessions stand, and how much is enough',
    '- hours.md: when I can train',
    '- one note a day, named after its date: the sessions, the readings, how it felt',
    '',
    '## Before I train by this',
    '',
    'The journal does arithmetic on my own notes. It is no medical advice, and no replacement for a qualified coach, physiotherapist or doctor.',
    '',
    'Sharp, sudden, one-sided or worsening pain, numbness, tingling, weakness, swelling, pain at night or at rest: I stop, and see a licensed health professional before I load that region again.',
    '',
    'Very mobile joints, pregnancy, a recent injury or operation, and anybody under 18: the plan is made with a licensed professional and, for minors, a guardian. Local rules on supervision, spotting, mats and rigging hold.',
    '',
  ].join('\n');
}

function goalsNote(today: IsoDate, nextMonday: IsoDate): string {
  const by = addDays(nextMonday, 16 * 7 - 1);
  const half = addDays(nextMonday, 8 * 7 - 1);
  return [
    '# Goals',
    '',
    'One example, to be replaced by a goal of my own: something that can be measured, with a date that it can be reached by.',
    '',
    '## Front split',
    '',
    `- #goal front-split from:${nextMonday} by:${by} "Front split, hips on the floor"`,
    '- #why here stands the reason that I want to read on the day on which I do not feel like it; it is private',
    '- #metric gap from:14cm to:0cm noise:1cm sides -- pelvis to floor, by tape, after the warm-up',
    `- [ ] #step half-way by:${half} metric:gap to:7cm`,
    '- #need flexibility 2/week 60min 7/10 routine:hip-opening',
    '- #need strength 1/week 45min 6/10 routine:legs-and-trunk',
    '',
    `Begun on ${today}; the first week that counts is the one of ${nextMonday}.`,
    '',
  ].join('\n');
}

const routinesNote = [
  '# Routines',
  '',
  'The lines beneath a routine are copied under each of its sessions. Examples, to be replaced together with a coach.',
  '',
  '- #routine hip-opening flexibility 60min regions:hips,hamstrings',
  '  - warm-up: ten minutes, until I am warm',
  '  - lunges, both sides, 2 x 45 s, easy first',
  '  - half splits, both sides, 2 x 45 s',
  '  - front split on blocks, both sides, 3 x 30 s',
  '  - five minutes of lying still',
  '- #routine legs-and-trunk strength 45min regions:legs,trunk',
  '  - warm-up: ten minutes, until I am warm',
  '  - split squats, both sides, 3 x 8',
  '  - hip raises, 3 x 10',
  '  - hollow hold, 3 x 20 s',
  '- #routine easy-day recovery 30min',
  '  - a walk, or lying with the feet up',
  '  - self-massage of what feels tight, gently',
  '',
].join('\n');

const rulesNote = [
  '# Rules',
  '',
  'These hold from the start, without a line: hard flexibility sessions stand 48 h apart, and so do hard strength sessions; every week has a recovery session and a day of rest. A line of mine replaces the one for the same subject.',
  '',
  '- #rule any cap:2h -- no day holds more training than this',
  '- #kind handstand like:skill',
  '',
].join('\n');

const hoursNote = [
  '# Hours',
  '',
  'When sessions may stand, and days that are taken.',
  '',
  '- #free mon tue wed thu fri 18:00-21:00',
  '- #free sat sun 10:00-13:00',
  '',
  'A day away is written like this: `#busy 2026-08-03..2026-08-09`.',
  '',
].join('\n');

function firstDay(today: IsoDate): string {
  return newDayNoteText(
    today,
    [
      '- [ ] #session recovery 30min 2/10 routine:easy-day -- the first entry: read the notes, change what is not me',
      '  - a walk, or lying with the feet up',
      '  - self-massage of what feels tight, gently',
      '',
      'After training I tick the box and write how hard it was. A reading goes on a line of its own, such as `#measure front-split gap 14cm side:left warm`; what is sore, such as `#sore hips 3/10`; what went well after `#win`.',
    ],
    '\n',
  );
}

/**
 * The notes of a journal to begin with: one example goal with its routines, rules and hours, and today's note.
 * A note is created only where no file stands.
 */
export function starterJournal(options: StarterJournalOptions): readonly NoteChange[] {
  const { root, today, zone, exists } = options;
  const nextMonday = addDays(today, 8 - isoWeekday(dayNumber(today)));
  const notes: readonly (readonly [string, string])[] = [
    ['journal.md', journalNote(zone)],
    ['goals.md', goalsNote(today, nextMonday)],
    ['routines.md', routinesNote],
    ['rules.md', rulesNote],
    ['hours.md', hoursNote],
    [`${today}.md`, firstDay(today)],
  ];
  return notes
    .map(([name, text]) => ({ note: root === '' ? name : `${root}/${name}`, text }))
    .filter(({ note }) => !exists(note))
    .map(({ note, text }) => ({ kind: 'create', note, text }));
}

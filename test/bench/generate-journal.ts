import type { NotePath } from '../../src/journal/note';
import {
  addDays,
  type DayNumber,
  dayNumber,
  type IsoDate,
  isoDate,
  isoWeekday,
} from '../../src/notation/time/iso-date';
import { isoWeekOfDay } from '../../src/notation/time/iso-week';

/** What is to be generated. */
export interface GeneratedJournal {
  /** How many day notes; one for each day up to `last`. */
  readonly dayNotes: number;
  readonly last: IsoDate;
  /** The same seed gives the same journal. */
  readonly seed: number;
}

/** Pseudo-random whole numbers below `limit`: 32-bit xorshift (Marsaglia 2003, triple 13, 17, 5). */
function randomNumbers(seed: number): (limit: number) => number {
  // Zero would stay zero for ever.
  let state = seed | 0 || 1;
  return (limit) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % limit;
  };
}

const planNotes: Readonly<Record<NotePath, string>> = {
  'journal.md':
    '# Training journal\n\n#athlete "Ilka"\n#zone Europe/Lisbon\n\nDay notes are in `log/`, one folder a year.\n',
  'rules.md': `# Rules

#kind hoop like:strength

- #rule flexibility gap:48h -- two hard ones in a row cost me the third
- #rule strength gap:48h
- #rule hamstrings gap:48h
- #rule hard max:5/week
- #rule any max:8/week cap:2h30
- #rule rest-day min:1/week
- #rule recovery min:1/week

- #need recovery 1/week 45min 2/10 routine:unwind
`,
  'hours.md': `# Hours

- #free monday 18:00-20:30 where:studio
- #free tuesday 18:00-20:00 with:juno
- #free wednesday 19:30-21:30 where:studio with:coach
- #free thursday 18:00-20:30 where:studio
- #free saturday 10:00-13:00 where:studio
- #free sunday 10:00-12:30
`,
  'routines.md': `# Routines

- #routine front-split flexibility 75min regions:hamstrings,hip-flexors
  - warm-up, 12 min: rope or stairs, leg swings front and side
  - half split, 2 x 60 s a side
- #routine shoulder-bridge flexibility 60min regions:shoulders,upper-back
  - bridge, feet raised, 5 x 20 s
- #routine handstand-line skill 45min regions:wrists,shoulders
  - chest to wall, 4 x 30 s
- #routine press strength 40min regions:wrists,shoulders
- #routine hoop-lines hoop 75min regions:forearms,upper-back
- #routine unwind recovery 45min
`,
};

const goals = [
  { id: 'low-split', metric: 'pelvis-gap', from: 16, to: 4, unit: 'cm', sides: false },
  { id: 'shoulder-opening', metric: 'opening', from: 155, to: 175, unit: 'deg', sides: true },
  { id: 'handstand', metric: 'hold', from: 8, to: 30, unit: 's', sides: false },
] as const;

/** Kind, time, length and effort, goal, rest of the line. */
const sessions = [
  ['flexibility', '18:30', '75min', 7, 'low-split', 'routine:front-split'],
  ['skill', '18:30', '45min', 5, 'handstand', 'with:juno routine:handstand-line'],
  ['flexibility', '20:00', '60min', 6, 'shoulder-opening', 'with:coach where:studio routine:shoulder-bridge'],
  ['hoop', '18:30', '75min', 7, 'low-split', 'where:studio routine:hoop-lines'],
  ['strength', '12:00', '40min', 6, 'handstand', 'routine:press'],
  ['recovery', '17:00', '45min', 2, '', 'routine:unwind'],
] as const;

const exercises = [
  'warm-up: rope, leg swings front and side, 20 deep squats',
  'half split, flex and point, 2 x 60 s a side',
  'low lunge, back knee on the double mat, 3 x 60 s a side',
  'front split over one block, 4 x 40 s, breathing out on the way down',
  'chest to wall, 4 x 30 s, ribs in, toes long',
  'kick-ups with a hand at the hip, 3 x 5, eyes on the floor first',
  'bridge with feet raised, 5 x 15 s, press the chest towards the wall',
  'split in the hoop, foot on the top bar, 4 x 15 s a side',
  'pike compressions, 4 x 10, slowly on the way back',
  'ball under the feet and the glutes, 15 min',
];

const words = [
  'The floor was cold and the left side took its time, as it does after a day on the chair.',
  'Better than last week. Not by much, and I would not bet on it, but the back knee stayed quiet.',
  'Shoulders first next time: they were done before the legs had begun. Water, and an apple before, not after.',
  'Filmed the second round. The line is longer than it feels; the head is still in the way.',
  'Short night, so one round less and the same care. Slept at ten.',
  'Tape under the bone, block against the heel, phone on the same tile. Same way every time or it means nothing.',
];

const regions = ['hamstrings', 'hip-flexors', 'shoulders', 'wrists', 'forearms', 'upper-back'];

function goalNote({ id, metric, from, to, unit, sides }: (typeof goals)[number], last: IsoDate): string {
  const lines = [
    `# ${id}`,
    '',
    `- [ ] #goal ${id} by:${addDays(last, 120)} from:${addDays(last, -110)} "Towards ${id}"`,
    '',
    '#why The act ends there, and I have cut it from the music twice.',
    '',
    `#metric ${metric} from:${from}${unit} to:${to}${unit} noise:1${unit}${sides ? ' sides' : ''}`,
    '',
    `- [ ] #step half-way by:${addDays(last, 30)} metric:${metric} to:${(from + to) / 2}${unit}`,
    '',
    `- #need ${id === 'handstand' ? 'skill' : 'flexibility'} 2/week 60min 7/10`,
    '',
  ];
  return lines.join('\n');
}

/** One day: a session or two with their exercises, readings, soreness, and words around them. */
function dayNote(day: DayNumber, isPast: boolean, random: (limit: number) => number): string {
  const pick = <Value>(from: readonly Value[]): Value => from[random(from.length)] as Value;
  const lines = [`# ${isoDate(day)}`, '', pick(words), ''];
  const count = isoWeekday(day) === 5 ? 0 : 1 + Number(random(4) === 0);
  for (let index = 0; index < count; index += 1) {
    const [kind, time, length, effort, goal, rest] = pick(sessions);
    const box = isPast && random(8) > 0 ? 'x' : ' ';
    const rating = box === 'x' ? ` ${Math.min(10, effort + random(3))}/10` : '';
    const skipped = isPast && box === ' ' && random(2) === 0 ? ' skipped:work' : '';
    const purpose = goal === '' ? '' : ` for:${goal}`;
    const remark = random(2) === 0 ? '' : ` -- ${pick(words).slice(0, 40).trim()}`;
    lines.push(`- [${box}] #session ${kind} ${time} ${length}${rating}${purpose} ${rest}${skipped}${remark}`);
    for (let exercise = 0; exercise < 5; exercise += 1) lines.push(`  - ${pick(exercises)}`);
  }
  lines.push('');
  if (random(3) === 0) {
    const { id, metric, from, to, unit, sides } = pick(goals);
    for (let repeat = 0; repeat < 3; repeat += 1) {
      const value = (from + to) / 2 + random(30) / 10;
      const side = sides ? ` side:${random(2) === 0 ? 'left' : 'right'}` : '';
      lines.push(`#measure ${id} ${metric} ${value.toFixed(1)}${unit}${side} warm`);
    }
    lines.push('');
  }
  if (random(3) === 0) lines.push(`#sore ${pick(regions)} ${1 + random(6)}/10`, '');
  if (random(6) === 0) lines.push(`#win ${pick(words)}`, '');
  for (let sentence = 0; sentence < 5; sentence += 1) lines.push(pick(words));
  lines.push('', '```text', 'round 1  40 s  40 s  35 s', 'round 2  40 s  38 s  30 s', '```', '');
  return lines.join('\n');
}

/** The texts of an invented journal of the sample's shape, by path: about 1.2 kB a day note. */
export function generateJournal({ dayNotes, last, seed }: GeneratedJournal): ReadonlyMap<NotePath, string> {
  const random = randomNumbers(seed);
  const notes = new Map<NotePath, string>(Object.entries(planNotes));
  for (const goal of goals) notes.set(`goals/${goal.id}.md`, goalNote(goal, last));
  const lastDay = dayNumber(last);
  for (let day = lastDay - dayNotes + 1; day <= lastDay; day += 1) {
    const date = isoDate(day);
    notes.set(`log/${date.slice(0, 4)}/${date}.md`, dayNote(day, day < lastDay - 3, random));
    if (isoWeekday(day) === 7 && random(3) === 0) {
      notes.set(
        `weeks/${isoWeekOfDay(day)}.md`,
        `# ${isoWeekOfDay(day)}\n\n${words[random(words.length)]}\n`,
      );
    }
  }
  return notes;
}

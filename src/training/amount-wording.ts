import type { Message } from './finding';
import type { WeekShortfall } from './per-week';
import type { RuleSubject } from './rule-subject';
import { message, minutesInWords } from './wording';

type CountedIn = WeekShortfall['countedIn'];

/** The name in a subject; empty where the subject needs none. */
function nameIn(subject: RuleSubject): string {
  return 'name' in subject ? subject.name : '';
}

/** What is counted, as it stands in a sentence whose place 3 is the subject's name. */
function counted(subject: RuleSubject, countedIn: CountedIn, plural: boolean): string {
  const session = plural ? 'sessions' : 'session';
  switch (subject.about) {
    case 'kind':
      return countedIn === 'sessions' ? `{3} ${session}` : 'of {3}';
    case 'goal':
      return countedIn === 'sessions' ? `${session} for {3}` : 'for {3}';
    case 'region':
      return countedIn === 'sessions' ? `${session} that ${plural ? 'load' : 'loads'} {3}` : 'that load {3}';
    case 'hard':
      return countedIn === 'sessions' ? `hard ${session}` : 'of hard training';
    default:
      return countedIn === 'sessions' ? `training ${session}` : 'of training';
  }
}

/** `4 skill sessions stand in week 2026-W09; the rule allows 2`. */
export function aboveMaximumWords(
  subject: RuleSubject,
  amounts: { readonly countedIn: CountedIn; readonly held: number; readonly allowed: number },
  week: string,
  by: 'rule' | 'need',
): Message {
  const { countedIn } = amounts;
  const show = (amount: number) => (countedIn === 'sessions' ? amount : minutesInWords(amount));
  return message(
    `Week {2} holds {0} ${counted(subject, countedIn, amounts.held !== 1)}; the ${by} allows {1}`,
    show(amounts.held),
    show(amounts.allowed),
    week,
    nameIn(subject),
  );
}

function roomWords(isOver: boolean, hasRoom: boolean, daysLeft: number): string {
  if (isOver) return 'the week is over';
  if (hasRoom) return daysLeft === 1 ? 'there is still room on {4} day' : 'there is still room on {4} days';
  return daysLeft === 0 ? 'no day is left for it' : 'the days that are left ({4}) cannot hold the rest';
}

/** What a week lacks, and whether what is left of it can hold that. */
export function belowMinimumWords(
  subject: RuleSubject,
  shortfall: WeekShortfall,
  week: string,
  room: { readonly isOver: boolean; readonly hasRoom: boolean; readonly daysLeft: number },
): Message {
  const { countedIn, held, asked } = shortfall;
  const show = (amount: number) => (countedIn === 'sessions' ? amount : minutesInWords(amount));
  const what = counted(subject, countedIn, asked !== 1);
  const amounts =
    countedIn === 'sessions' && asked === 1
      ? `Week {2} holds no ${what}, and {1} is asked for`
      : `Week {2} holds {0} of the {1} ${what} asked for`;
  return message(
    `${amounts}; ${roomWords(room.isOver, room.hasRoom, room.daysLeft)}`,
    show(held),
    show(asked),
    week,
    nameIn(subject),
    room.daysLeft,
  );
}

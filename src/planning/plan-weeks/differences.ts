import { type DayNumber, isoWeekday } from '../../notation/time/iso-date';
import { addWeeks, type IsoWeek } from '../../notation/time/iso-week';
import { formatTime, type WallMinutes } from '../../notation/time/wall-clock';
import type { Message } from '../../training/finding';
import type { SessionFacts } from '../../training/session-facts';
import type { CheckContext } from '../../training/week-under-check';
import { message, weekdayName } from '../../training/wording';

/** A session of a week, as far as it is compared. */
interface Compared {
  readonly sort: string;
  readonly kind: string;
  readonly day: DayNumber;
  readonly start: WallMinutes | undefined;
}

function compared({ session, goals }: SessionFacts): Compared {
  const kind = session.kind;
  const start = session.entry.span?.value.start;
  return { sort: `${kind} ${[...goals].sort().join()}`, kind, day: session.day, start };
}

function placeWord({ day, start }: Compared): string {
  return start === undefined ? weekdayName(day) : `${weekdayName(day)} ${formatTime(start)}`;
}

/** Takes out of `from` the session most like `one`: on the same weekday and time when there is one. */
function takeLike(from: Compared[], one: Compared): Compared | undefined {
  const like = from.filter(({ sort }) => sort === one.sort);
  const same = like.find(({ day, start }) => isoWeekday(day) === isoWeekday(one.day) && start === one.start);
  const sameDay = like.find(({ day }) => isoWeekday(day) === isoWeekday(one.day));
  const taken = same ?? sameDay ?? like[0];
  if (taken) from.splice(from.indexOf(taken), 1);
  return taken;
}

/** Those that stay where they were are matched first, so that no two change places in words only. */
function inOrderOfLikeness(now: readonly Compared[], before: readonly Compared[]): readonly Compared[] {
  const stays = (one: Compared) =>
    before.some(
      (other) =>
        other.sort === one.sort && isoWeekday(other.day) === isoWeekday(one.day) && other.start === one.start,
    );
  return [...now.filter(stays), ...now.filter((one) => !stays(one))];
}

/**
 * What `week` holds otherwise than the week before: sessions at another place, new ones, and those that are gone.
 * @param context The journal with everything placed.
 */
export function differencesTo(context: CheckContext, week: IsoWeek): readonly Message[] {
  const before = context.weeks(addWeeks(week, -1)).standing.map(compared);
  const now = context.weeks(week).standing.map(compared);
  if (before.length === 0) return [];
  const left = [...before];
  const found = inOrderOfLikeness(now, before).flatMap((one): { day: DayNumber; words: Message }[] => {
    const was = takeLike(left, one);
    if (!was) return [{ day: one.day, words: message('{0}: new, {1}', one.kind, placeWord(one)) }];
    if (isoWeekday(was.day) === isoWeekday(one.day) && was.start === one.start) return [];
    const words = message('{0}: {1} in place of {2}', one.kind, placeWord(one), placeWord(was));
    return [{ day: one.day, words }];
  });
  return [
    ...found.sort((one, other) => one.day - other.day).map(({ words }) => words),
    ...left.map((gone) => message('{0}: no more on {1}', gone.kind, placeWord(gone))),
  ];
}

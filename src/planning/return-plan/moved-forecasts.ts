import { addDays, dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { isoWeekOf, mondayOf } from '../../notation/time/iso-week';
import type { Message } from '../../training/finding';
import { figuresOfGoal } from '../../training/progress/goal-figures';
import type { CheckContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import type { ReturnLimits } from './return-limits';

/** What a return does to the date of a goal. */
export interface MovedForecast {
  readonly goal: string;
  readonly daysLater: number;
  readonly message: Message;
}

/** Days that the weeks of a return leave out, as if training and progress went hand in hand. */
function daysLeftOut({ weeks }: ReturnLimits): number {
  return weeks.reduce((sum, { cutPercent }) => sum + (7 * cutPercent) / 100, 0);
}

/** Days without training from the last session, or from a later reading, to the first week of the return. */
function daysWithout(limits: ReturnLimits, measured: IsoDate, begin: number): number {
  const from = Math.max(dayNumber(limits.lastDone), dayNumber(measured));
  return limits.break?.backOn === undefined && limits.break ? Math.max(0, begin - from) : 0;
}

/**
 * Where the forecasts of the open goals go when the time without training, and what the return leaves out, are added:
 * arithmetic on the pace before, no measurement. Goals without a forecast are left out; no target and no date changes.
 */
export function movedForecasts(context: CheckContext, limits: ReturnLimits): readonly MovedForecast[] {
  const { journal, plan, today, weeks } = context;
  const begin = mondayOf(limits.weeks[0]?.week ?? isoWeekOf(today));
  return [...plan.goals.values()]
    .filter(({ closed }) => !closed)
    .flatMap((goal) => {
      const { worst } = figuresOfGoal(journal, goal, { today, weeks });
      const forecast = worst?.series.forecast;
      const measured = worst?.series.days.at(-1)?.date;
      if (forecast?.status !== 'estimated' || measured === undefined) return [];
      const daysLater = Math.round(daysWithout(limits, measured, begin) + daysLeftOut(limits));
      return [
        {
          goal: goal.id,
          daysLater,
          message: message(
            `{0} to {1} becomes {2} to {3}; the target${goal.by === undefined ? ' stays' : ' and the date, {4}, stay'}`,
            forecast.earliest,
            forecast.latest,
            addDays(forecast.earliest, daysLater),
            addDays(forecast.latest, daysLater),
            goal.by ?? '',
          ),
        },
      ];
    });
}

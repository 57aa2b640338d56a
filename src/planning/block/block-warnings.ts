import type { WrittenBlock } from '../../journal/journal';
import { painCaution } from '../../training/cautions';
import type { Message } from '../../training/finding';
import { openNeeds } from '../../training/open-needs';
import type { CheckContext } from '../../training/week-under-check';
import { message } from '../../training/wording';
import { returnLimits } from '../return-plan/return-limits';
import type { BlockFigures } from './block-figures';
import { askedByKind, type BlockOutline } from './block-outline';
import type { BlockSettings } from './block-settings';
import { minutesOf } from './kind-volumes';
import { totalOf } from './volume-before';

/** To be shown with every block. */
export const blockCautions: readonly Message[] = [
  message(
    'How fast a block may grow, how light a lighter week is and how a taper goes is borrowed from runners, strength athletes and endurance sports; nothing of it was tested for flexibility, hand balancing or aerial work. It promises nothing: do less when less feels right.',
  ),
  message(
    'Training advice here is arithmetic on your own notes. It is not medical advice, and does not replace a qualified coach, physiotherapist or doctor. Hypermobility, pregnancy, a recent injury or operation, and athletes under 18 need a plan made with a licensed professional.',
  ),
  message(painCaution),
];

/** What there is to say before a block is laid out. */
export function outlineWarnings(
  context: CheckContext,
  { kinds, weeks, before }: BlockOutline,
  top: number,
): readonly Message[] {
  const isKnown = totalOf(before.minutes) > 0;
  const unknown = isKnown ? kinds.filter((kind) => before.minutes.get(kind) === 0) : [];
  const peaks = kinds.flatMap((kind, column): readonly Message[] => {
    const asked = Math.max(
      ...weeks.map(({ week }) =>
        Math.floor(((askedByKind(context.plan, week).get(kind)?.minutes ?? 0) * top) / 100),
      ),
    );
    const held = Math.max(
      ...weeks.map(({ volumes }) => minutesOf(volumes[column] ?? { sessions: 0, length: 0 })),
    );
    // What rounding to whole lengths leaves out is no news.
    return held >= 0.95 * asked
      ? []
      : [
          message(
            '{0} comes to {1} min a week at the most within the limit; {2} are asked',
            kind,
            held,
            asked,
          ),
        ];
  });
  return [
    ...(isKnown
      ? []
      : [
          message(
            'No week that is over holds any training: the first week is compared with nothing. Lower it in the table when it is more than you do now',
          ),
        ]),
    ...unknown.map((kind) =>
      message('{0}: none in the weeks before, so that it begins with half of what is asked', kind),
    ),
    ...peaks,
  ];
}

/** What there is to say of a block as its table stands. */
export function blockWarnings(
  context: CheckContext,
  block: Pick<WrittenBlock, 'rows'>,
  figures: BlockFigures,
  settings: BlockSettings,
): readonly Message[] {
  const back = returnLimits(context, 4)?.break;
  const above = figures.weeks.flatMap(({ week, aboveLimit }) =>
    aboveLimit.map(({ kind, percent }) =>
      message(
        '{0}: {1} is {2} % above the three building weeks before it; your limit is {3} %',
        week,
        kind,
        Math.ceil(percent),
        settings.mostIncrease,
      ),
    ),
  );
  const unasked = block.rows.flatMap(({ week, volumes }) => {
    const asked = new Set(openNeeds(context.plan, week.value).map(({ kind }) => kind));
    return volumes
      .filter(({ kind, minutes }) => minutes > 0 && !asked.has(kind))
      .map(({ kind }) =>
        message('{0}: no open need asks for {1}, so that nothing is planned for it', week.value, kind),
      );
  });
  return [
    ...(back && back.backOn === undefined
      ? [message('The last session was {0} days ago: a return in steps comes before a block', back.days)]
      : []),
    ...above,
    ...unasked,
  ];
}

import type { Severity } from '../../training/finding';
import type { Shape } from '../parts/dom';
import type { RosterMark } from '../roster-page-data';

/** How each state of an athlete is drawn, on 16 by 16 units: no two are alike in outline. */
export const stateShapes: Readonly<Record<RosterMark, readonly Shape[]>> = {
  pain: [
    ['path', { d: 'M8 .8 15.2 8 8 15.2 .8 8Z', class: 'full' }],
    ['path', { d: 'M8 4.4V8.8M8 10.6V11.8', class: 'cut' }],
  ],
  slipping: [['path', { d: 'M1.5 3.5H5.5V8H10V12.5H14.5' }]],
  silent: [['path', { d: 'M1 8H4M6.5 8H9.5M12 8H15' }]],
  findings: [['path', { d: 'M1 11C2.2 6.5 3.8 6.5 5 9.5S7.8 12.5 9 9.5 11.6 5 15 9' }]],
  behind: [['path', { d: 'M4 15V1.5L13.5 5 4 8.5' }]],
  fine: [
    ['circle', { cx: 8, cy: 8, r: 6.4 }],
    ['path', { d: 'M4.8 8.3 7.1 10.6 11.2 5.6' }],
  ],
};

/** How grave a finding is. */
export const severityShapes: Readonly<Record<Severity, readonly Shape[]>> = {
  error: [
    ['rect', { x: 1.5, y: 1.5, width: 13, height: 13, class: 'full' }],
    ['path', { d: 'M5 5 11 11M11 5 5 11', class: 'cut' }],
  ],
  warning: [
    ['path', { d: 'M8 1.8 15 14.2H1Z' }],
    ['path', { d: 'M8 6V10M8 11.4V12.6' }],
  ],
  information: [
    ['circle', { cx: 8, cy: 8, r: 6.4 }],
    ['path', { d: 'M8 7.2V11.6M8 4.4V5.6' }],
  ],
};

/** Most boxes that are drawn for a week; where more stand in it, the words alone say how many. */
export const mostBoxes = 10;

/** The sessions of a week as a row of boxes, those done filled. */
export function weekBoxes(done: number, planned: number): readonly Shape[] {
  return Array.from({ length: planned }, (_, index) => [
    'rect',
    {
      x: 1 + index * 10,
      y: 3,
      width: 8,
      height: 8,
      ...(index < done ? { class: 'full' } : {}),
    },
  ]);
}

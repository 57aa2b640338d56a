import type { SessionMark } from '../../training/month/month-facts';
import type { Shape } from '../parts/dom';

/**
 * How each state of a session is drawn, on 16 by 16 units. `full` is filled, `cut` is drawn in the colour of what lies
 * behind; all others are lines. A box is empty only as long as there is something to tick.
 */
export const markShapes: Readonly<Record<SessionMark, readonly Shape[]>> = {
  kept: [
    ['circle', { cx: 8, cy: 8, r: 7, class: 'full' }],
    ['path', { d: 'M4.6 8.4 7 10.8 11.4 5.4', class: 'cut' }],
  ],
  missed: [
    ['circle', { cx: 8, cy: 8, r: 6.2 }],
    ['path', { d: 'M5 8H11' }],
  ],
  excused: [
    ['circle', { cx: 8, cy: 8, r: 6.2, 'stroke-dasharray': '2.6 2.2' }],
    ['path', { d: 'M5 8H11' }],
  ],
  unmarked: [
    ['circle', { cx: 8, cy: 8, r: 6.2 }],
    ['circle', { cx: 8, cy: 8, r: 1.7, class: 'full' }],
  ],
  moved: [['path', { d: 'M1.5 8H13.5M9 3.5 13.5 8 9 12.5' }]],
  planned: [['rect', { x: 2.2, y: 2.2, width: 11.6, height: 11.6 }]],
};

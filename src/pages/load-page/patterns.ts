import type { ThemeColours } from '../parts/theme';

/** How the parts of a bar are told apart without their colours: full, slanted lines, dots, flat lines, crossed lines. */
const drawings: readonly ((context: CanvasRenderingContext2D) => void)[] = [
  (context) => context.fillRect(0, 0, 8, 8),
  (context) => {
    context.beginPath();
    for (const shift of [-8, 0, 8]) {
      context.moveTo(shift, 8);
      context.lineTo(shift + 8, 0);
    }
    context.stroke();
  },
  (context) => {
    for (const [x, y] of [
      [2, 2],
      [6, 6],
    ] as const) {
      context.beginPath();
      context.arc(x, y, 1.4, 0, 2 * Math.PI);
      context.fill();
    }
  },
  (context) => context.fillRect(0, 2, 8, 2.5),
  (context) => {
    context.beginPath();
    context.moveTo(4, 0);
    context.lineTo(4, 8);
    context.moveTo(0, 4);
    context.lineTo(8, 4);
    context.stroke();
  },
];

/** The colour of the `index`th part. No colour here warns of anything. */
export function partColour(index: number, colours: ThemeColours): string {
  const all = [colours.left, colours.right, colours.target, colours.load, colours.session];
  return all[index % all.length] ?? colours.text;
}

/** The filling of the `index`th part of a bar. */
export function partFill(index: number, colours: ThemeColours): CanvasPattern | string {
  const colour = partColour(index, colours);
  const tile = document.createElement('canvas');
  tile.width = 8;
  tile.height = 8;
  const context = tile.getContext('2d');
  if (!context) return colour;
  context.fillStyle = colour;
  context.strokeStyle = colour;
  context.lineWidth = 1.8;
  drawings[index % drawings.length]?.(context);
  return context.createPattern(tile, 'repeat') ?? colour;
}

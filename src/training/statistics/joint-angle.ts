/** A place on a photo, in pixels; `y` grows downwards. */
export interface ImagePoint {
  readonly x: number;
  readonly y: number;
}

/** Three clicks: a place on one limb, the joint, a place on the other limb. */
export interface JointClicks {
  readonly from: ImagePoint;
  readonly joint: ImagePoint;
  readonly to: ImagePoint;
}

/** The side, as seen on the photo, on which the angle opens from the first limb to the second. */
export type Opening = 'clockwise' | 'anticlockwise';

const DEGREES = 180 / Math.PI;

/**
 * The unsigned angle between two limbs in degrees, 0..180: atan2(|u x v|, u.v), which keeps its digits where the arc
 * cosine loses them. It can never exceed 180, so a limb beyond straight reads short: use `openingAngle` there.
 * `undefined` when the joint coincides with a limb's point.
 */
export function jointAngle({ from, joint, to }: JointClicks): number | undefined {
  const limbs = limbsOf(from, joint, to);
  return limbs && Math.atan2(Math.abs(limbs.cross), limbs.dot) * DEGREES;
}

/**
 * The signed angle through which the first limb turns towards the second in the chosen sense, in degrees, above -90
 * and up to 270: continuous through 0 and through 180, so that a split beyond straight reads as more than 180 and
 * clicking error near straight does not fold back. `undefined` when the joint coincides with a limb's point.
 */
export function openingAngle({ from, joint, to }: JointClicks, opening: Opening): number | undefined {
  const limbs = limbsOf(from, joint, to);
  if (!limbs) return undefined;
  // With y growing downwards, a positive cross product turns clockwise as seen.
  const turn = Math.atan2(opening === 'clockwise' ? limbs.cross : -limbs.cross, limbs.dot) * DEGREES;
  return turn <= -90 ? turn + 360 : turn;
}

/**
 * The standard error of either angle, in degrees, when each clicked coordinate has a standard error of
 * `clickError` pixels: s sqrt(1/|u|2 + 1/|v|2 + |from - to|2 / (|u|2 |v|2)). First-order propagation, all three clicks
 * independent; the longer the limbs on the photo, the smaller. `undefined` as for the angle.
 */
export function jointAngleError({ from, joint, to }: JointClicks, clickError: number): number | undefined {
  const limbs = limbsOf(from, joint, to);
  if (!limbs) return undefined;
  const [u, v] = [limbs.firstSquared, limbs.secondSquared];
  const span = (from.x - to.x) ** 2 + (from.y - to.y) ** 2;
  return clickError * Math.sqrt(1 / u + 1 / v + span / (u * v)) * DEGREES;
}

function limbsOf(from: ImagePoint, joint: ImagePoint, to: ImagePoint) {
  const u = { x: from.x - joint.x, y: from.y - joint.y };
  const v = { x: to.x - joint.x, y: to.y - joint.y };
  const firstSquared = u.x * u.x + u.y * u.y;
  const secondSquared = v.x * v.x + v.y * v.y;
  if (firstSquared === 0 || secondSquared === 0) return undefined;
  return { cross: u.x * v.y - u.y * v.x, dot: u.x * v.x + u.y * v.y, firstSquared, secondSquared };
}

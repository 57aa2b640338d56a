/** A length on a photo beside a reference of known length in the same plane. */
export interface PhotoLengths {
  /** The wanted length, in pixels. */
  readonly target: number;
  /** The reference, in pixels. */
  readonly reference: number;
  /** The true length of the reference, in the unit that is wanted. */
  readonly referenceLength: number;
  /** Standard error of that length, same unit. */
  readonly referenceError: number;
  /** Standard error of one end of a clicked line, in pixels, along the line. */
  readonly clickError: number;
}

/** A length read off a photo. */
export interface ScaledLength {
  /** One photo, one reading. */
  readonly n: 1;
  readonly length: number;
  readonly standardError: number;
  readonly relativeError: number;
}

/**
 * target x referenceLength / reference, with relative error sqrt((sD/D)2 + (sP/P)2 + (sL/L)2), where both ends of
 * either line are clicked: sD = sP = sqrt(2) x clickError. First-order propagation. `undefined` unless both
 * references are positive and the target is.
 */
export function scaledLength(photo: PhotoLengths): ScaledLength | undefined {
  const { target, reference, referenceLength, referenceError, clickError } = photo;
  if (!(target > 0 && reference > 0 && referenceLength > 0)) return undefined;
  const lineError = Math.SQRT2 * clickError;
  const length = (target * referenceLength) / reference;
  const relativeError = Math.hypot(
    lineError / target,
    lineError / reference,
    referenceError / referenceLength,
  );
  return { n: 1, length, standardError: length * relativeError, relativeError };
}

/**
 * How many times too long a limb reads that is nearer to the camera than the reference: distance/(distance - nearer).
 * 3 m and 10 cm give 1.0345. Both in the same unit; `nearer` below the distance.
 */
export function depthFactor(cameraDistance: number, nearer: number): number {
  return cameraDistance / (cameraDistance - nearer);
}

/** The share of its length that a limb shows when it points out of the photo's plane by `degrees`: its cosine. */
export function foreshortening(degrees: number): number {
  return Math.cos((degrees * Math.PI) / 180);
}

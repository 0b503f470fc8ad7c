import type { Figure } from '../../figure/figure';
import { PART } from '../../figure/partIds';
import { pointOfPart } from '../../figure/place';
import { AT, type Pose } from '../../model/chain';

/** Joints that can be taken hold of in the picture, in the order in which they are placed. */
export const PIN_IDS = ['leadWrist', 'chest', 'shoulderLine'] as const;
export type PinId = (typeof PIN_IDS)[number];

/** Numbers a pin takes: its place (m) and the way (unit) it goes as its movement grows. World frame of the right-handed player. */
export const PIN_SIZE = 6;
/** Room for the pins. */
export const createPins = (): Float64Array => new Float64Array(PIN_IDS.length * PIN_SIZE);

/** On the rib cage, in its axes, fractions of stature: below the lead arm's shoulder, on the trail side of the breastbone. */
const CHEST = { x: -0.03, y: 0.118, z: 0.066 } as const;
/** Ends of the shoulder line from the middle of the shoulders toward the lead side, fractions of stature. */
export const SHOULDER_LINE = { lead: 0.2, trail: -0.27 } as const;

/** A place on the shoulder line, `reach` (m) from the middle of the shoulders toward the lead side. Written into `out`. */
export function onShoulderLine(pose: Pose, reach: number, out: Float64Array): Float64Array {
  for (let i = 0; i < 3; i++) out[i] = pose[AT.midShoulder + i] + reach * pose[AT.thoraxAxes + i];
  return out;
}

const place = new Float64Array(3);

/**
 * Where the pins are and which way they go. The lead wrist bows along the hand's -x axis (the flexion turns the shaft that way), the
 * breastbone turns along the chest's x axis, the trail end of the shoulder line sinks along the trunk. Allocates nothing.
 */
export function placePins(figure: Figure, placement: Float64Array, pose: Pose, out: Float64Array): void {
  const { k } = figure.measures;
  pointOfPart(placement, PART.wristLead, 0, 0, 0, place);
  put(out, 0, pose, AT.handAxes, -1);
  pointOfPart(placement, PART.ribcage, CHEST.x * k, CHEST.y * k, CHEST.z * k, place);
  put(out, 1, pose, AT.thoraxAxes, 1);
  onShoulderLine(pose, SHOULDER_LINE.trail * k, place);
  put(out, 2, pose, AT.trunkAxes + 3, -1);
}

function put(out: Float64Array, pin: number, pose: Pose, way: number, sign: 1 | -1): void {
  const at = pin * PIN_SIZE;
  for (let i = 0; i < 3; i++) {
    out[at + i] = place[i];
    out[at + 3 + i] = sign * pose[way + i];
  }
}

import type { Handed } from '../../flight/shape';
import type { Shot } from '../../flight/shot';
import type { Delivery } from '../../reading/delivery/delivery';
import {
  sayApex,
  sayAttack,
  sayBallSpeed,
  sayCarry,
  sayCurve,
  sayDynamicLoft,
  sayFaceBand,
  sayFaceToPath,
  sayHeadSpeed,
  sayLaunch,
  sayLowPoint,
  sayOffline,
  sayPath,
  sayPlaneDirection,
  sayPlaneTilt,
  sayShaftBend,
  sayShaftLean,
  saySpin,
  saySpinAxis,
  saySpinLoft,
  sayStart,
  type DeliveryWords,
  type Units,
} from '../../words';

/** What the club does at the ball, in the order in which a coach asks. */
export const deliveryRows = (d: Delivery, units: Units): DeliveryWords[] => [
  sayPath(d.path),
  sayFaceBand(d),
  sayFaceToPath(d.faceToPath),
  sayAttack(d.attack),
  sayDynamicLoft(d.dynamicLoft),
  sayShaftBend(d.shaftBend),
  saySpinLoft(d.spinLoft),
  sayShaftLean(d.shaftLean),
  sayHeadSpeed(d.headSpeed, units),
  sayLowPoint(d.lowPoint, units),
  sayPlaneTilt(d.planeTilt),
  sayPlaneDirection(d.planeDirection),
];

/** What the ball does. */
export const ballRows = (shot: Shot, handed: Handed, units: Units): DeliveryWords[] => [
  sayCarry(shot, units),
  sayStart(shot, handed),
  sayCurve(shot, handed, units),
  sayOffline(shot, handed, units),
  sayApex(shot, units),
  sayBallSpeed(shot, units),
  sayLaunch(shot),
  saySpin(shot),
  saySpinAxis(shot, handed),
];

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

/** Readings that answer one question, under its name. */
export interface BallRows {
  readonly title: string;
  readonly rows: readonly DeliveryWords[];
}

/** Everything that is known of strike and flight, by what it decides: side, height, distance. */
export function ballRows(d: Delivery, shot: Shot | undefined, handed: Handed, units: Units): readonly BallRows[] {
  const ifFlown = (rows: (flown: Shot) => DeliveryWords[]): DeliveryWords[] => (shot ? rows(shot) : []);
  return [
    {
      title: 'Left and right',
      rows: [
        sayPath(d.path),
        sayFaceBand(d),
        sayFaceToPath(d.faceToPath),
        sayPlaneDirection(d.planeDirection),
        ...ifFlown((flown) => [
          sayStart(flown, handed),
          saySpinAxis(flown, handed),
          sayCurve(flown, handed, units),
          sayOffline(flown, handed, units),
        ]),
      ],
    },
    {
      title: 'High and low',
      rows: [
        sayAttack(d.attack),
        sayLowPoint(d.lowPoint, units),
        sayPlaneTilt(d.planeTilt),
        sayShaftLean(d.shaftLean),
        sayShaftBend(d.shaftBend),
        sayDynamicLoft(d.dynamicLoft),
        saySpinLoft(d.spinLoft),
        ...ifFlown((flown) => [sayLaunch(flown), sayApex(flown, units)]),
      ],
    },
    {
      title: 'How far',
      rows: [
        sayHeadSpeed(d.headSpeed, units),
        ...ifFlown((flown) => [sayBallSpeed(flown, units), saySpin(flown), sayCarry(flown, units)]),
      ],
    },
  ];
}

import { rad } from '../../src/math/angle';
import type { Delivery } from '../../src/reading/delivery/delivery';

type Given = Partial<
  Pick<
    Delivery,
    | 'path'
    | 'attack'
    | 'face'
    | 'dynamicLoft'
    | 'headSpeed'
    | 'miss'
    | 'status'
    | 'reachShortfall'
    | 'returnTakes'
    | 'ends'
  >
>;

/** A made-up delivery of a 7-iron: straight and square unless told otherwise. Radians, metres, m/s. */
export function deliveryWith(given: Given): Delivery {
  const { path = 0, attack = rad(-4), face = 0, dynamicLoft = rad(27), headSpeed = 36 } = given;
  const pointing = (length: number, up: number, right: number): [number, number, number] => [
    length * Math.cos(up) * Math.cos(right),
    length * Math.sin(up),
    length * Math.cos(up) * Math.sin(right),
  ];
  const headVelocity = pointing(headSpeed, attack, path);
  const faceNormal = pointing(1, dynamicLoft, face);
  const along = headVelocity.reduce((sum, v, i) => sum + v * faceNormal[i], 0) / headSpeed;
  const end = { t: 0.25, face, headVelocity, faceNormal };
  return {
    rule: 'held plane',
    status: 'held',
    t: 0.25,
    impactTime: 0.25,
    path,
    attack,
    face,
    faceLeft: face,
    faceReturned: face,
    returnTakes: null,
    ends: [end, end],
    faceToPath: face - path,
    dynamicLoft,
    shaftBend: rad(1),
    spinLoft: Math.acos(along),
    shaftLean: rad(8),
    headSpeed,
    lowPoint: 0.07,
    planeTilt: rad(58),
    planeDirection: 0,
    headVelocity,
    faceNormal,
    miss: { toe: 0, high: 0, late: 0 },
    reachShortfall: 0,
    limited: [],
    ...given,
  };
}

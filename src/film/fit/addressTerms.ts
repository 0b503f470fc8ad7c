import type { CameraUnknowns } from './cameraUnknowns';
import { LANDMARK_SD, MARK_SD, type FilmMarks, type Pixel, type Typed } from '../marks';
import { toFarImage, toImage } from '../pinhole';
import type { Expected } from './player';
import type { TermList } from './termList';
import { ADDRESS_SD, U } from './unknowns';

/** Height of the toes of a shoe, m (our estimate). */
const TOE_HEIGHT = 0.02;
/** How far the horizon that is marked may lie from eye level, as a share of the focal length: 0.25 deg (our estimate). */
const HORIZON_SLACK = 0.0044;

/**
 * Adds what the address frame and the typed place of the camera ask. `sight` holds the camera when the terms are written. Returns the
 * unknowns that they answer to.
 */
export function addAddressTerms(
  list: TermList,
  sight: Float64Array,
  camera: CameraUnknowns,
  expected: Expected,
  { size, address, camera: typed }: FilmMarks,
): readonly number[] {
  const used: number[] = [U.lie, U.lean];
  const { head, hands, swing } = expected;
  const { length } = swing.rig.club;
  const see = (x: number, y: number, z: number): void => toImage(sight, size, x, y, z, list.image);

  list.point('clubHead', address.clubHead, LANDMARK_SD.club, () => see(head[0], head[1], head[2]));
  list.point('gripEnd', address.gripEnd, LANDMARK_SD.club, (x) => {
    const lie = expected.lie + ADDRESS_SD.lie * x[U.lie];
    const lean = expected.lean + ADDRESS_SD.lean * x[U.lean];
    const across = length * Math.cos(lean);
    see(head[0] - length * Math.sin(lean), head[1] + across * Math.sin(lie), head[2] - across * Math.cos(lie));
  });

  const toe = (name: 'trailToe' | 'leadToe', toX: number, toZ: number): void => {
    const mark = address[name];
    if (!mark) return;
    used.push(toX, toZ);
    const [usualX, usualZ] = expected[name];
    list.point(name, mark, LANDMARK_SD.toe, (x) =>
      see(usualX + ADDRESS_SD.toe * x[toX], TOE_HEIGHT, usualZ + ADDRESS_SD.toe * x[toZ]),
    );
  };
  toe('trailToe', U.trailToeX, U.trailToeZ);
  toe('leadToe', U.leadToeX, U.leadToeZ);

  if (address.stick) {
    // The end that is lower in the picture is the nearer one.
    const [near, far] = address.stick.toSorted((a, b) => b[1] - a[1]);
    used.push(U.stickZ, U.stickNear, U.stickFar);
    const end = (mark: Pixel, at: number): void =>
      list.point('stick', mark, 0, (x) =>
        see(head[0] + ADDRESS_SD.stickX * x[at], 0, head[2] + ADDRESS_SD.stickZ * x[U.stickZ]),
      );
    end(near, U.stickNear);
    end(far, U.stickFar);
  }
  addFarTerms(list, sight, { size, address }, used);
  const place = (name: string, given: Typed | undefined, value: (x: Float64Array) => number): void => {
    if (given) list.add(name, 1, (x, out, at) => (out[at] = (value(x) - given.value) / given.sd));
  };
  place('heightM', typed?.height, (x) => camera.eye(x, 1));
  place('distanceM', typed?.distance, (x) => hands[0] - camera.eye(x, 0));
  place('sidewaysM', typed?.sideways, (x) => camera.eye(x, 2) - hands[2]);
  return used;
}

/** What lies far away, or has a direction only. */
function addFarTerms(
  list: TermList,
  sight: Float64Array,
  { size, address: { target, horizon, upright } }: Pick<FilmMarks, 'size' | 'address'>,
  used: number[],
): void {
  const far = new Float64Array(3);
  if (target) {
    used.push(U.targetHeight);
    list.point('target', target, 0, (x) => {
      toFarImage(sight, size, 1, Math.tan(ADDRESS_SD.target * x[U.targetHeight]), 0, far);
      list.image[0] = far[0] / far[2];
      list.image[1] = far[1] / far[2];
    });
  }
  for (const [u, v, sd = MARK_SD.tapped] of horizon ?? []) {
    list.add('horizon', 1, (_, out, at) => {
      // How far the mark lies above eye level in the picture, px.
      const rise = sight[12] * sight[10] + (u - size.w / 2) * sight[4] + (size.h / 2 - v) * sight[7];
      out[at] = rise / Math.hypot(sight[4], sight[7]) / Math.hypot(sd, HORIZON_SLACK * sight[12]);
    });
  }
  if (upright) {
    const [a, b] = upright;
    const sd = list.sdOf(a, 0) * Math.SQRT2;
    list.add('upright', 1, (_, out, at) => {
      // Where uprights meet, seen from the middle of the edge: the edge has to point there.
      toFarImage(sight, size, 0, 1, 0, far);
      const du = far[0] - far[2] * ((a[0] + b[0]) / 2);
      const dv = far[1] - far[2] * ((a[1] + b[1]) / 2);
      out[at] = (du * (b[1] - a[1]) - dv * (b[0] - a[0])) / Math.hypot(du, dv) / sd;
    });
  }
}

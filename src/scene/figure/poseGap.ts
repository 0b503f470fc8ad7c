import { AT, type Pose } from '../../model/chain';

/** Places that tell two poses apart: the club's head, hands, trail elbow, between the shoulders, pelvis. */
const PLACES = [AT.head, AT.leadGrip, AT.trailElbow, AT.midShoulder, AT.pelvis] as const;

/** How far two poses of one player are apart at most, m: of the club's head, the hands, the trail elbow, the shoulders and the pelvis. */
export function poseGap(a: Pose, b: Pose): number {
  let gap = 0;
  for (const at of PLACES) gap = Math.max(gap, Math.hypot(a[at] - b[at], a[at + 1] - b[at + 1], a[at + 2] - b[at + 2]));
  return gap;
}

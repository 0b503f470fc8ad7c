import { useRef } from 'react';
import { PART } from '../../figure/partIds';
import type { SceneFrame } from '../sceneFrame';
import { Floor } from '../setting/floor';
import { TargetLine } from '../setting/targetLine';
import { useBuilt, usePose, useScene } from './sceneContext';

const FEET = [PART.footLead, PART.footTrail] as const;

/** Squared paper with the shadow, the dark discs under feet and ball, and the target line with its rule and arrowhead. */
export function Ground() {
  const { theme, lines } = useScene();
  const floor = useBuilt(() => new Floor(theme));
  const line = useBuilt(() => new TargetLine(theme, lines.targetLine));
  const drawnFor = useRef<unknown>(undefined);
  usePose((frame, { referenceSwing }) => {
    putDiscs(floor, frame);
    if (drawnFor.current !== referenceSwing) line.draw(frame.ball);
    drawnFor.current = referenceSwing;
  });
  const { geometry, material } = line.arrowhead;
  return (
    <>
      <mesh geometry={floor.geometry} material={floor.material} receiveShadow renderOrder={-1} />
      <mesh geometry={geometry} material={material} frustumCulled={false} renderOrder={1} />
    </>
  );
}

/** Under each sole, under the ball, and a wide one under the player. */
function putDiscs(floor: Floor, { figure, placement, heelLift, ball, flying }: SceneFrame): void {
  const { k } = figure!.measures;
  FEET.forEach((foot, i) => {
    const at = foot * 12;
    const yaw = Math.atan2(placement[at + 3], placement[at + 5]);
    // Under the part of the sole that still rests on the ground.
    const lift = i === 1 ? heelLift : 0;
    const ahead = (0.034 + 0.05 * lift) * k;
    const [x, z] = [placement[at + 9] + Math.sin(yaw) * ahead, placement[at + 11] + Math.cos(yaw) * ahead];
    floor.put(i, x, z, 0.074 * k, (0.13 - 0.06 * lift) * k, yaw, 1 - 0.25 * lift);
  });
  const strength = flying[0] === ball[0] ? Math.max(0.3, 1.3 - ball[1] * 8) : Math.max(0, 1.3 - flying[1] * 8);
  floor.put(2, flying[0], flying[2], 0.043, 0.043, 0, strength);
  floor.put(3, 0, 0.03, 0.4 * k, 0.3 * k, 0, 0.34);
}

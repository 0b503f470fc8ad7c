import { useRef } from 'react';
import type { Group } from 'three';
import { BALL_RADIUS } from '../../figure/stance';
import { contourMaterial } from '../figure/materials';
import { fillBallRows } from '../figure/rigidPartShader';
import { BallFlightTrail } from '../lines/ballFlightTrail';
import { FlightModel } from '../lines/flightModel';
import { useBuilt, usePose, useScene } from './sceneContext';

/** One metre high, hung by its top: scaled to whatever is left between ball and ground. Radii above and below, height, m. */
const PEG = [0.0055, 0.0022, 1, 14] as const;

/** The ball, drawn with the figure in the batch of solids; its tee, and once it is struck its way and its start line. */
export function Ball() {
  const { theme, lines, solids, frame } = useScene();
  const trail = useRef<BallFlightTrail>(null);
  trail.current ??= new BallFlightTrail(theme, lines.trail);
  const model = useRef<FlightModel>(null);
  model.current ??= new FlightModel(theme, lines.flight);
  const modelled = useRef<unknown>(undefined);
  const tee = useRef<Group>(null);
  const ink = useBuilt(() => contourMaterial(theme, frame.size));
  usePose(({ ball, flying, sinceStrike }, { struck }) => {
    fillBallRows(solids.rows, flying);
    trail.current!.draw(ball, struck, sinceStrike);
    const track = struck?.isWhole ? struck.track : undefined;
    if (modelled.current !== track) model.current!.draw(ball, track);
    modelled.current = track;
    const peg = tee.current!;
    const height = ball[1] - 0.9 * BALL_RADIUS;
    peg.visible = ball[1] > BALL_RADIUS + 0.004;
    peg.position.set(ball[0], height, ball[2]);
    peg.scale.y = height;
    peg.updateMatrix();
  });
  return (
    <group ref={tee}>
      <mesh position={[0, -0.5, 0]}>
        <cylinderGeometry args={[...PEG]} />
        <meshStandardMaterial color={theme.beech[0]} roughness={0.6} />
      </mesh>
      <mesh position={[0, -0.5, 0]} material={ink}>
        <cylinderGeometry args={[...PEG]} />
      </mesh>
    </group>
  );
}

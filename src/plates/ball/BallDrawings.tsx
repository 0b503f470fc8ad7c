import { ShotPlan } from './ShotPlan';
import { Strike } from './Strike';

/** Both drawings of the ball: how it is struck, and where it flies. */
export default function BallDrawings() {
  return (
    <>
      <Strike />
      <ShotPlan />
    </>
  );
}

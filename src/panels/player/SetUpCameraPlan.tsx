import { deg, toDeg, toRad } from '../../math/angle';
import { PICTURE_ASPECT, type CameraView } from '../../reading/camera/camera';
import { throughCameras, useDerived, useDesk } from '../../store';

/** Size of the drawing and where the hands lie in it, px. The camera looks up the page, its right is right. */
const WIDTH = 160;
const HEIGHT = 164;
const HANDS = { x: WIDTH / 2, y: 40 } as const;
const FOOT = 16;
/** Across, px a metre. Along, a camera is drawn at the foot however far away it is. */
const ACROSS = 38;
/** How far the picture's edges are drawn past the hands, as a share of the way to them. */
const PAST = 1.22;

/** The set-up from above: golfer, ball, the line a camera belongs on, the camera and what its picture holds. Not to scale along the line. */
export function SetUpCameraPlan({ view }: { view: CameraView }) {
  const place = useDesk(({ document }) => document.camera[view]);
  const { better } = useDesk(throughCameras);
  const isLeft = useDerived(({ player }) => player.handed === 'left');
  const along = HEIGHT - HANDS.y - FOOT;
  const within = (x: number): number => Math.min(WIDTH - 10, Math.max(10, x));
  const eye = { x: within(HANDS.x + (place.rightCm / 100) * ACROSS), y: HANDS.y + along };
  // True directions, drawn in a picture that is squeezed along the line.
  const aim = Math.atan2(-place.rightCm / 100, place.distanceM) + toRad(deg(place.aimRightDeg));
  const half = Math.atan(Math.tan(toRad(deg(place.fieldDeg)) / 2) * PICTURE_ASPECT);
  const at = (turn: number): { x: number; y: number } => {
    const aside = Math.tan(Math.max(-1.2, Math.min(1.2, aim + turn))) * place.distanceM;
    return { x: eye.x + aside * PAST * ACROSS, y: eye.y - along * PAST };
  };
  const [left, middle, right] = [at(-half), at(0), at(half)];
  const tilt = toDeg(Math.atan2(middle.x - eye.x, eye.y - middle.y));
  const betterX = view === 'downTheLine' && better ? within(HANDS.x + (better.rightCm / 100) * ACROSS) : undefined;
  return (
    <svg className="camera-plan" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <polygon className="plan-field" points={`${eye.x},${eye.y} ${left.x},${left.y} ${right.x},${right.y}`} />
      <line className="plan-line" x1={HANDS.x} x2={HANDS.x} y1={6} y2={HEIGHT - 4} />
      {view === 'downTheLine' ? <FromBehind side={isLeft ? -1 : 1} /> : <FromTheFront />}
      {betterX !== undefined && Math.abs(betterX - eye.x) > 10 && (
        <circle className="plan-better" cx={betterX} cy={eye.y} r="6" />
      )}
      <g transform={`translate(${eye.x} ${eye.y}) rotate(${tilt})`}>
        <path className="plan-camera" d="M-8 -3h16v11h-16zM-4 -3l-2.5 -6h13l-2.5 6z" />
      </g>
    </svg>
  );
}

/** Feet, shoulders and head about a point, seen from above; `turn` the way the toes point, degrees from the right of the page. */
const Body = ({ x, y, turn }: { x: number; y: number; turn: number }) => (
  <g className="plan-body" transform={`translate(${x} ${y}) rotate(${turn}) scale(${ACROSS})`}>
    <ellipse cx={0} cy={-0.2} rx={0.14} ry={0.06} />
    <ellipse cx={0} cy={0.2} rx={0.14} ry={0.06} />
    <ellipse cx={0.05} cy={0} rx={0.11} ry={0.24} />
    <circle cx={0.14} cy={0} r={0.1} />
  </g>
);

/** Down the line the golfer stands beside the line of the hands, the ball beyond it, the target up the page. */
const FromBehind = ({ side }: { side: 1 | -1 }) => (
  <>
    <Body x={HANDS.x - side * 0.2 * ACROSS} y={HANDS.y} turn={side > 0 ? 0 : 180} />
    <circle className="plan-ball" cx={HANDS.x + side * 0.46 * ACROSS} cy={HANDS.y} r="3" />
  </>
);

/** Face on he looks down the page at the ball. */
const FromTheFront = () => (
  <>
    <Body x={HANDS.x} y={HANDS.y - 0.2 * ACROSS} turn={90} />
    <circle className="plan-ball" cx={HANDS.x} cy={HANDS.y + 0.46 * ACROSS} r="3" />
  </>
);

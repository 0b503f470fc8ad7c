import { createFigure } from '../figure/figure';
import { heelLiftAt, placeBall } from '../figure/stance';
import { drawSticks } from '../figure/sticks/sticks';
import { createPose } from '../model/chain';
import { K } from '../model/keys';
import { swingPose } from '../reading/swing';
import { current, currentPose, desk, useDerived, useDesk } from '../store';

type Point = readonly [number, number, number];
type Line = readonly Point[];

function sticksOfDesk() {
  const { swing, referenceSwing, body, club } = current();
  const atImpact = createPose();
  swingPose(referenceSwing, referenceSwing.reference.times[K.impact], atImpact);
  const ballPoint = placeBall(club, atImpact, new Float64Array(3));
  const heelLift = heelLiftAt(swing, desk.getState().session.t);
  const sticks = drawSticks(createFigure(body, club), body.stature, currentPose(), { ballPoint, heelLift });
  const ball: Point = [ballPoint[0], ballPoint[1], ballPoint[2]];
  return { ...sticks, ball };
}

/** Stick figure down the line and face on, for when no 3D picture can be drawn. Follows the desk like the picture does. */
export function StickFigure({ note }: { note: string }) {
  useDesk((state) => state.session.t);
  useDesk((state) => state.session.bench);
  useDerived((derived) => derived.swing);
  const mirror = useDerived((derived) => (derived.player.handed === 'left' ? -1 : 1));
  const { lines, head, club, ball, headRadius, reach } = sticksOfDesk();
  const views: readonly (readonly [string, (p: Point) => readonly [number, number]])[] = [
    ['down the line', ([, y, z]) => [z * mirror, y]],
    ['face on', ([x, y]) => [x * mirror, y]],
  ];
  return (
    <div className="stage-sticks">
      <div className="stage-sticks-sheet">
        <p>{note}</p>
        <div className="stage-sticks-pair">
          {views.map(([name, project]) => {
            const path = (line: Line): string =>
              line
                .map((p) =>
                  project(p)
                    .map((v, i) => (i ? -v : v).toFixed(3))
                    .join(' '),
                )
                .join(' L ');
            const middle = name === 'face on' ? 0 : 0.3 * mirror;
            const [hx, hy] = project(head);
            const [bx, by] = project(ball);
            return (
              <figure key={name}>
                <svg
                  viewBox={`${middle - reach / 2} ${-reach} ${reach} ${reach * 1.03}`}
                  preserveAspectRatio="xMidYMax meet"
                  aria-hidden="true"
                >
                  <path
                    d={`M ${middle - reach * 0.48} 0 L ${middle + reach * 0.48} 0`}
                    className="stage-stick-ground"
                  />
                  {lines.map((line, i) => (
                    <path key={i} d={`M ${path(line)}`} className="stage-stick" />
                  ))}
                  <circle cx={hx} cy={-hy} r={headRadius} className="stage-stick" />
                  <path d={`M ${path(club)}`} className="stage-stick-club" />
                  <circle cx={bx} cy={-by} r={0.03} className="stage-stick" />
                </svg>
                <figcaption>{name}</figcaption>
              </figure>
            );
          })}
        </div>
      </div>
    </div>
  );
}

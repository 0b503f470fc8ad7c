import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import { createFigure } from '../figure/figure';
import { heelLiftAt, placeBall } from '../figure/stance';
import { drawSticks } from '../figure/sticks/sticks';
import type { ExportSnapshot, ShownSwing } from '../export/task/exportSnapshot';
import { K } from '../model/keys';
import { createPose } from '../model/pose';
import { drawnPose, swingPose } from '../reading/swing';
import { linkedTime } from '../store/derive/compare';
import type { Clock } from './clock';
import type { Side, TwinStage } from './twinStage';

interface Props {
  readonly subject: ExportSnapshot;
  readonly clock: Clock;
  readonly side: Side;
}

/** Before and after, moving together: stick figures at once, the figure in 3D as soon as it is there. */
export function Twins({ subject, clock, side }: Props) {
  const [isDrawn, setDrawn] = useState(false);
  return (
    <div className="twins">
      {!isDrawn && <Sticks subject={subject} clock={clock} side={side} />}
      <Canvas subject={subject} clock={clock} side={side} onDrawn={setDrawn} />
    </div>
  );
}

/** Each swing's own time: at the same position of its swing. */
const timesOf = ({ now, after }: ExportSnapshot, t: number): readonly [number, number] => [
  t,
  linkedTime(t, now.positions, after.positions),
];

function Canvas({ subject, clock, side, onDrawn }: Props & { onDrawn: (isDrawn: boolean) => void }) {
  const place = useRef<HTMLDivElement>(null);
  const wanted = useRef(side);
  const redraw = useRef<() => void>(undefined);
  useEffect(() => {
    let stage: TwinStage | undefined;
    let isGone = false;
    const canvas = document.createElement('canvas');
    const draw = (): void => stage?.draw(timesOf(subject, clock.get().t), wanted.current);
    const end = clock.subscribe(draw);
    const observer = new ResizeObserver(([{ contentRect }]) => {
      if (contentRect.width === 0) return;
      stage?.resize(contentRect.width, contentRect.height);
      draw();
    });
    const lose = (): void => onDrawn(false);
    const restore = (): void => {
      draw();
      onDrawn(true);
    };
    canvas.addEventListener('webglcontextlost', lose);
    canvas.addEventListener('webglcontextrestored', restore);
    redraw.current = draw;
    const open = async (): Promise<void> => {
      const { TwinStage: Stage } = await import('./twinStage');
      if (isGone || !place.current) return;
      place.current.append(canvas);
      stage = new Stage(canvas, subject);
      const { clientWidth, clientHeight } = place.current;
      stage.resize(clientWidth, clientHeight);
      draw();
      observer.observe(place.current);
      onDrawn(true);
    };
    // Refused, or not fetched: the stick figures stay.
    open().catch(() => canvas.remove());
    return () => {
      isGone = true;
      end();
      observer.disconnect();
      canvas.removeEventListener('webglcontextlost', lose);
      stage?.dispose();
      canvas.remove();
    };
  }, [subject, clock, onDrawn]);
  useEffect(() => {
    wanted.current = side;
    redraw.current?.();
  }, [side]);
  return <div ref={place} className="twins-canvas" />;
}

function Sticks({ subject, clock, side }: Props) {
  const { t } = useSyncExternalStore(clock.subscribe, clock.get);
  const times = timesOf(subject, t);
  return (
    <div className="twins-sticks" aria-hidden="true">
      {[subject.now, subject.after].map((take, i) => (
        <Stick key={take.label} subject={subject} take={take} t={times[i]} side={side} />
      ))}
    </div>
  );
}

function Stick({ subject, take, t, side }: { subject: ExportSnapshot; take: ShownSwing; t: number; side: Side }) {
  const { body, club, player, referenceSwing } = subject.derived;
  const [figure, ballPoint] = useMemo(() => {
    const atImpact = createPose();
    swingPose(referenceSwing, referenceSwing.reference.times[K.impact], atImpact);
    return [createFigure(body, club), placeBall(club, atImpact, new Float64Array(3))] as const;
  }, [body, club, referenceSwing]);
  const pose = createPose();
  drawnPose(take.swing, t, pose);
  const stance = { ballPoint, heelLift: heelLiftAt(take.swing, t) };
  const sticks = drawSticks(figure, body.stature, pose, stance);
  const mirror = player.handed === 'left' ? -1 : 1;
  const flat = ([x, y, z]: readonly [number, number, number]): string =>
    `${((side === 'faceOn' ? x : z) * mirror).toFixed(3)} ${(-y).toFixed(3)}`;
  const path = (points: readonly (readonly [number, number, number])[]): string => `M ${points.map(flat).join(' L ')}`;
  const [hx, hy] = flat(sticks.head).split(' ');
  const [bx, by] = flat([ballPoint[0], ballPoint[1], ballPoint[2]]).split(' ');
  const { reach } = sticks;
  const middle = side === 'faceOn' ? 0 : 0.3 * mirror;
  return (
    <svg viewBox={`${middle - reach / 2} ${-reach} ${reach} ${reach * 1.03}`} preserveAspectRatio="xMidYMax meet">
      {sticks.lines.map((line, i) => (
        <path key={i} d={path(line)} />
      ))}
      <circle cx={hx} cy={hy} r={sticks.headRadius} />
      <path d={path(sticks.club)} className="twins-club" />
      <circle cx={bx} cy={by} r={0.03} />
    </svg>
  );
}

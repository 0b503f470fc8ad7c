import { useEffect, useRef } from 'react';
import { MARKS } from './filmMarks';
import { useFilm } from './filmStore';

interface Props {
  readonly w: number;
  readonly h: number;
  /** The model is right-handed: a left-handed player's picture is its mirror image. */
  readonly isLeft: boolean;
}

/** Over the film: the ground as the found camera sees it, the model's contour, the shaft's line and the pins. */
export function FilmOverlay({ w, h, isLeft }: Props) {
  const answer = useFilm((film) => film.answer);
  const view = useFilm((film) => film.view);
  const place = useFilm((film) => film.place);
  const active = useFilm((film) => film.active);
  const frame = useFilm((film) => film.frame);
  const marked = useFilm((film) => film.sheet[film.place]);
  const touch = useFilm((film) => film.touch);
  const read = answer && 'ground' in answer ? answer : undefined;
  const flip = (u: number): number => (isLeft ? w - u : u);
  const unit = h / 800;
  const isKept = useFilm((film) => film.place === 'address' && film.notes.isTripodKept);
  const isHere = marked !== undefined && (isKept || marked.frame === frame);
  return (
    <>
      {view.outline && <Outline w={w} h={h} isLeft={isLeft} />}
      <svg className="film-overlay" viewBox={`0 0 ${w} ${h}`} aria-hidden="true" style={{ ['--unit' as string]: unit }}>
        {view.grid &&
          place === 'address' &&
          read?.ground.map(({ kind, from, to }, i) => (
            <line
              // The lines of one camera come in one order.
              key={i}
              data-kind={kind}
              x1={flip(from[0])}
              y1={from[1]}
              x2={flip(to[0])}
              y2={to[1]}
            />
          ))}
        {view.marks && isHere && marked.line && (
          <>
            <line
              data-kind="halo"
              x1={marked.line[0][0]}
              y1={marked.line[0][1]}
              x2={marked.line[1][0]}
              y2={marked.line[1][1]}
            />
            <line
              data-kind="shaft"
              x1={marked.line[0][0]}
              y1={marked.line[0][1]}
              x2={marked.line[1][0]}
              y2={marked.line[1][1]}
            />
          </>
        )}
        {view.marks &&
          isHere &&
          MARKS[place].map(({ id }) => {
            const pin = marked.points[id];
            if (!pin) return null;
            const [u, v] = touch && id === active ? touch : pin.at;
            return <Pin key={id} u={u} v={v} unit={unit} isActive={id === active} />;
          })}
        {touch && !(active !== undefined && isHere && marked.points[active]) && (
          <Pin u={touch[0]} v={touch[1]} unit={unit} isActive />
        )}
      </svg>
    </>
  );
}

function Pin({ u, v, unit, isActive }: { u: number; v: number; unit: number; isActive: boolean }) {
  const hairs = `M${u - 14 * unit} ${v}h${8 * unit}M${u + 6 * unit} ${v}h${8 * unit}M${u} ${v - 14 * unit}v${8 * unit}M${u} ${v + 6 * unit}v${8 * unit}`;
  return (
    <g className="film-pin" data-active={isActive || undefined}>
      <path className="film-pin-halo" d={hairs} />
      <path d={hairs} />
      <circle cx={u} cy={v} r={6 * unit} />
    </g>
  );
}

/** The outer contour of the figure: every part's outline in ink, then what lies inside taken away. */
function Outline({ w, h, isLeft }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const outline = useFilm((film) => film.outline);
  const share = useFilm(({ view }) => view.film);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return;
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.globalCompositeOperation = 'source-over';
    context.clearRect(0, 0, w, h);
    if (!outline) return;
    if (isLeft) context.setTransform(-1, 0, 0, 1, w, 0);
    const paths = outline.map((points) => {
      const path = new Path2D();
      for (let i = 0; i < points.length; i += 2) path.lineTo(points[i], points[i + 1]);
      path.closePath();
      return path;
    });
    context.lineJoin = 'round';
    for (const [color, width] of [
      ['#fcf9f1', h / 110],
      ['#211d18', h / 260],
    ] as const) {
      context.strokeStyle = color;
      context.lineWidth = width;
      for (const path of paths) context.stroke(path);
    }
    context.globalCompositeOperation = 'destination-out';
    for (const path of paths) context.fill(path);
    // With the film faded out the figure is a body, not a hole.
    if (share < 1) {
      context.globalCompositeOperation = 'destination-over';
      context.fillStyle = `rgb(236 214 176 / ${1 - share})`;
      for (const path of paths) context.fill(path);
    }
  }, [outline, share, w, h, isLeft]);
  return <canvas ref={canvas} className="film-overlay" width={w} height={h} aria-hidden="true" />;
}

import { useEffect, useRef } from 'react';
import { MARKS } from './filmMarks';
import { useFilm } from './filmStore';
import { DASHED, paintContour, SOLID } from './over/paintContour';
import { useDesk } from '../../store';

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
  // Each is a canvas the size of the film.
  const isDrawn = useFilm(({ outline }) => outline !== undefined);
  const read = answer && 'ground' in answer ? answer : undefined;
  const flip = (u: number): number => (isLeft ? w - u : u);
  const unit = h / 800;
  const isKept = useFilm((film) => film.place === 'address' && film.notes.isTripodKept);
  const isHere = marked !== undefined && (isKept || marked.frame === frame);
  return (
    <>
      {view.target && isDrawn && <Outline what="target" w={w} h={h} isLeft={isLeft} />}
      {view.before && isDrawn && <Outline what="before" w={w} h={h} isLeft={isLeft} />}
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

/** The figure as it was marked, or as it would move toward the target. */
function Outline({ what, w, h, isLeft }: Props & { readonly what: 'before' | 'target' }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const parts = useFilm(({ outline }) => outline?.[what]);
  const share = useFilm(({ view }) => view.film);
  const isAlone = useFilm(({ view }) => what === 'before' || !view.before);
  const aim = useDesk(({ document }) => (document.plan ? 'plan' : 'reference'));
  useEffect(() => {
    const pen = canvas.current?.getContext('2d');
    const style = what === 'before' ? SOLID : DASHED[aim];
    if (pen) paintContour(pen, parts, { w, h, isLeft }, style, isAlone ? 1 - share : 0);
  }, [parts, share, w, h, isLeft, what, aim, isAlone]);
  return <canvas ref={canvas} className="film-overlay" width={w} height={h} aria-hidden="true" />;
}

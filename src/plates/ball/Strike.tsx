import { useId, useMemo, useRef } from 'react';
import type { Delivery } from '../../reading/delivery/delivery';
import { useDerived } from '../../store';
import { sayFaceBand, sayFaceToPath, sayPath, sayShape, speakDrawing } from '../../words';
import { LETTERS, NUMBERS, type Label } from './fromAbove';
import type { Figure } from '../annotation/lettering';
import { strikeDrawing } from './strikeDrawing';
import { areaPath, linePath, tenth } from '../figure/paths';
import { isRoomy, useSize } from '../useSize';
import './fromAbove.css';

/** A label of a drawing from above. */
export const Words = ({ label: { text, at } }: { label: Label }) => (
  <text className="above-label" x={tenth(at.x)} y={tenth(at.y)} fontSize={LETTERS.caption}>
    {text}
  </text>
);
/** A number with its unit on a drawing from above. */
export const Number = ({ figure: { number, unit, at } }: { figure: Figure }) => (
  <text className="above-number" x={tenth(at.x)} y={tenth(at.y)} fontSize={NUMBERS.figure}>
    {number}
    <tspan className="above-unit" dx={unit === '°' ? 0 : 3} fontSize={unit === '°' ? NUMBERS.figure : NUMBERS.unit}>
      {unit}
    </tspan>
  </text>
);

/** The strike at the ball, seen from above: the head's way, the face, and the angle between them. */
export function Strike() {
  const delivery = useDerived((derived) => derived.delivery);
  return 'missing' in delivery ? null : <Drawn delivery={delivery} />;
}

function Drawn({ delivery }: { delivery: Delivery }) {
  const handed = useDerived(({ player }) => player.handed);
  const shape = useDerived(({ shot, player }) => ('missing' in shot ? '' : sayShape(shot, player.handed).sentence));
  const picture = useRef<HTMLDivElement>(null);
  const size = useSize(picture);
  const hatch = useId();
  const dots = useId();
  const drawing = useMemo(
    () => (isRoomy(size) ? strikeDrawing(delivery, handed, size) : undefined),
    [delivery, handed, size],
  );
  const [path, face, between] = [sayPath(delivery.path), sayFaceBand(delivery), sayFaceToPath(delivery.faceToPath)];
  const label = speakDrawing('strike', `${path.spoken}, ${face.spoken}.`, `${between.spoken}.`, shape);
  return (
    <figure className="above">
      <figcaption>Strike, from above</figcaption>
      <div className="above-picture" ref={picture}>
        {drawing && size && (
          <svg viewBox={`0 0 ${size.width} ${size.height}`} role="img" aria-label={label}>
            <defs>
              <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <path d="M1 0V6" stroke="var(--ink)" strokeWidth="1.2" />
              </pattern>
              <pattern id={dots} width="7" height="7" patternUnits="userSpaceOnUse">
                <circle cx="2" cy="2" r="1.1" fill="var(--ink)" />
                <circle cx="5.5" cy="5.5" r="1.1" fill="var(--ink)" />
              </pattern>
            </defs>
            <path d={areaPath(drawing.wedge)} fill={`url(#${drawing.turn === 'open' ? hatch : dots})`} />
            <path className="above-target" d={linePath(drawing.target)} />
            <path className="above-solid" d={areaPath(drawing.targetHead)} />
            <path className="above-facing" d={linePath(drawing.facing)} />
            <path className="above-hollow" d={areaPath(drawing.facingHead)} />
            <path className="above-way" d={linePath(drawing.path)} />
            <path className="above-solid" d={areaPath(drawing.pathHead)} />
            <path className="above-face" d={areaPath(drawing.face)} />
            <circle className="above-ball" cx={drawing.ball.x} cy={drawing.ball.y} r={drawing.ballRadius} />
            {drawing.labels.map((each) => (
              <Words key={each.text} label={each} />
            ))}
            {drawing.angle && <Number figure={drawing.angle} />}
          </svg>
        )}
      </div>
      <p className="above-legend">
        <i className={`above-swatch is-${drawing?.turn ?? 'square'}`} aria-hidden="true" />
        <span>
          <b>{between.text}</b> to path
        </span>
      </p>
    </figure>
  );
}

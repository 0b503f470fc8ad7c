import { useId, useMemo, useRef } from 'react';
import type { Shot } from '../../flight/shot';
import { useDerived, useDesk } from '../../store';
import { CARRY_WIDTH, sayApex, sayCarry, sayCurve, sayNoShot, sayShape, sayStart, speakDrawing } from '../../words';
import { shotDrawing } from './shotDrawing';
import { Number, Words } from './Strike';
import { areaPath, linePath, tenth } from '../figure/paths';
import { isRoomy, useSize } from '../useSize';
import './fromAbove.css';

/** The shot seen from above, to scale: start line, curve, and the landing as wide as models differ. */
export function ShotPlan() {
  const shot = useDerived((derived) => derived.shot);
  if (!('missing' in shot)) return <Drawn shot={shot} />;
  return (
    <figure className="above">
      <figcaption>Shot, from above</figcaption>
      <p className="above-reason">{sayNoShot(shot)}</p>
    </figure>
  );
}

function Drawn({ shot }: { shot: Shot }) {
  const handed = useDerived(({ player }) => player.handed);
  const units = useDesk(({ document }) => document.units);
  const picture = useRef<HTMLDivElement>(null);
  const size = useSize(picture);
  const hatch = useId();
  const drawing = useMemo(
    () => (isRoomy(size) ? shotDrawing(shot, handed, units, size) : undefined),
    [shot, handed, units, size],
  );
  const said = [sayCarry(shot, units), sayStart(shot, handed), sayCurve(shot, handed, units), sayApex(shot, units)];
  const numbers = `${said.map(({ spoken }) => spoken).join(', ')}.`;
  const label = speakDrawing('shot', sayShape(shot, handed).sentence, numbers);
  return (
    <figure className="above">
      <figcaption>Shot, from above</figcaption>
      <div className="above-picture" ref={picture}>
        {drawing && size && (
          <svg viewBox={`0 0 ${size.width} ${size.height}`} role="img" aria-label={label}>
            <defs>
              <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <path d="M1 0V5" stroke="var(--ink)" strokeWidth="1.2" />
              </pattern>
            </defs>
            {drawing.arcs.map(({ radius }) => (
              <circle key={radius} className="above-arc" cx={drawing.ball.x} cy={drawing.ball.y} r={tenth(radius)} />
            ))}
            <path className="above-target" d={linePath(drawing.target)} />
            <path className="above-solid" d={areaPath(drawing.targetHead)} />
            <path className="above-start" d={linePath(drawing.start)} />
            <path className="above-strip" d={areaPath(drawing.width)} fill={`url(#${hatch})`} />
            <path className="above-tick" d={drawing.widthTicks.map(linePath).join('')} />
            <path className="above-curve" d={areaPath(drawing.curve).slice(0, -1)} />
            <circle className="above-apex" cx={tenth(drawing.apex.x)} cy={tenth(drawing.apex.y)} r="4" />
            <circle className="above-landing" cx={tenth(drawing.landing.x)} cy={tenth(drawing.landing.y)} r="4.5" />
            <circle className="above-ball" cx={drawing.ball.x} cy={drawing.ball.y} r="5" />
            {drawing.arcs.map(({ label: name }) => name && <Words key={name.text} label={name} />)}
            {drawing.labels.map((each) => (
              <Words key={each.text} label={each} />
            ))}
            {drawing.carry && <Number figure={drawing.carry} />}
          </svg>
        )}
      </div>
      <p className="above-legend" title={CARRY_WIDTH}>
        <i className="above-swatch is-open" aria-hidden="true" />
        <span>
          <b>{sayCarry(shot, units).text}</b> carry
        </span>
      </p>
    </figure>
  );
}

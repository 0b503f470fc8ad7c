import { memo, useId, useLayoutEffect, useRef, type ReactNode } from 'react';
import { HANDLE_RADIUS, PIN_RADIUS, REGISTER_CROSS, type Annotation, type OtherLine } from './annotation';
import type { DrawnPart } from './body';
import { paintParts } from './paintParts';
import type { PlateDrawing } from './plateDrawing';
import type { Point, Segment } from './frame';
import type { Caption, Lettering } from './lettering';

/** Half a tenth of a unit is below what any screen shows. */
const n = (value: number): number => Math.round(value * 10) / 10;
const linePath = ({ from, to }: Segment): string => `M${n(from.x)} ${n(from.y)}L${n(to.x)} ${n(to.y)}`;
const areaPath = (points: readonly Point[]): string =>
  points.length === 0 ? '' : `M${points.map(({ x, y }) => `${n(x)} ${n(y)}`).join('L')}Z`;

/** One solid: its contour, and the engraver's lines once they are there. The dark board chalks the lit side instead. */
const PartShape = memo(
  ({ tone, contour, shade, lit }: DrawnPart) => (
    <>
      <path className={`plate-part is-${tone}`} d={contour} />
      {shade && <path className="plate-engraving is-shade" d={shade} />}
      {lit && <path className="plate-engraving is-lit" d={lit} />}
    </>
  ),
  (a, b) => a.tone === b.tone && a.contour === b.contour && a.shade === b.shade && a.lit === b.lit,
);

interface PartsProps {
  readonly parts: readonly DrawnPart[];
  readonly inFront: boolean;
  readonly place: string;
}

const Parts = ({ parts, inFront, place }: PartsProps) => (
  <g transform={place}>{parts.map((part) => part.isInFront === inFront && <PartShape key={part.id} {...part} />)}</g>
);

/** The same, written to the page without rendering: forty solids change at every step of a slider. */
function LiveParts({ parts, inFront, place }: PartsProps) {
  const group = useRef<SVGGElement>(null);
  useLayoutEffect(() => paintParts(group.current!, parts, inFront), [parts, inFront]);
  return <g ref={group} transform={place} />;
}

const Words = ({
  caption: { text, at, anchor, leader },
  size,
  kind,
}: {
  caption: Caption;
  size: number;
  kind?: string;
}) => (
  <>
    {leader && <path className="plate-leader" d={linePath(leader)} />}
    <text className={`plate-caption ${kind ?? ''}`} x={n(at.x)} y={n(at.y)} textAnchor={anchor} fontSize={n(size)}>
      {text}
    </text>
  </>
);

const Other = ({ other: { kind, line, caption }, size }: { other: OtherLine; size: number }) => (
  <>
    <path className={`plate-other is-${kind}`} d={linePath(line)} />
    {caption && <Words caption={caption} size={size} kind={`is-${kind}`} />}
  </>
);

const Pin = ({ x, y }: Point) => (
  <g className="plate-pin" transform={`translate(${n(x)} ${n(y)})`}>
    <circle r={PIN_RADIUS} />
    <path d={`M${-REGISTER_CROSS} 0H${REGISTER_CROSS}M0 ${-REGISTER_CROSS}V${REGISTER_CROSS}`} />
  </g>
);

const Ring = ({ x, y }: Point) => (
  <g className="plate-ring" transform={`translate(${n(x)} ${n(y)})`}>
    <circle r={HANDLE_RADIUS} />
    <circle className="plate-ring-eye" r={2.4} />
  </g>
);

function Measure({ annotation, letters }: { annotation: Annotation; letters: Lettering }) {
  const { dimension, extensions, verdict } = annotation;
  if (!dimension) return null;
  const { line, ticks, figure } = dimension;
  return (
    <>
      {extensions.map((segment, i) => (
        <path key={i} className="plate-dimension" d={linePath(segment)} />
      ))}
      <path className="plate-dimension" d={linePath(line)} />
      <path className="plate-tick" d={ticks.map(linePath).join('')} />
      <text className={`plate-figure is-${verdict}`} x={n(figure.at.x)} y={n(figure.at.y)} fontSize={n(letters.figure)}>
        {figure.number}
        <tspan className="plate-unit" dx={3} fontSize={n(letters.unit)}>
          {figure.unit}
        </tspan>
      </text>
    </>
  );
}

interface Props {
  readonly drawing: PlateDrawing;
  readonly letters: Lettering;
  /** What the picture shows, as a sentence. */
  readonly label: string;
  /** How far the ring was pulled along its line's normal, units; nothing when it was not. */
  readonly pulled: number | undefined;
  /** Drawn again and again on the same page. */
  readonly live?: boolean;
  /** Marks of the coach or the player, drawn over the shaft line and under the ring. */
  readonly children?: ReactNode;
}

/** A plate's drawing as SVG. Everything in it comes worked out; nothing is decided here. */
export function Drawing({ drawing: { frame, parts, annotation }, letters, label, pulled, live, children }: Props) {
  const hatch = useId();
  const dots = useId();
  const { view, verdict, corridor, edges, zone, axis, pin, handle, captions, scaleBar, others } = annotation;
  const fill = verdict === 'steep' ? `url(#${hatch})` : verdict === 'shallow' ? `url(#${dots})` : 'none';
  const place = `translate(${n(frame.x0)} ${n(frame.y0)}) scale(.1)`;
  const Solids = live ? LiveParts : Parts;
  const shift = pulled === undefined ? undefined : { x: handle.direction.x * pulled, y: handle.direction.y * pulled };
  return (
    <svg
      className="plate-drawing"
      viewBox={`${view.left} ${view.top} ${view.right - view.left} ${view.bottom - view.top}`}
      role="img"
      aria-label={label}
    >
      <defs>
        <pattern id={hatch} width="5.6" height="5.6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M1 0V5.6" stroke="var(--steep)" strokeWidth="2.4" />
        </pattern>
        <pattern id={dots} width="6" height="6" patternUnits="userSpaceOnUse">
          <circle cx="1.5" cy="1.5" r="1.3" fill="var(--shallow)" />
          <circle cx="4.5" cy="4.5" r="1.3" fill="var(--shallow)" />
        </pattern>
      </defs>
      <path className="plate-corridor" d={areaPath(corridor)} />
      <Solids parts={parts} inFront={false} place={place} />
      <path className="plate-corridor-edge" d={edges.map(linePath).join('')} />
      <path d={areaPath(zone)} fill={fill} />
      <Solids parts={parts} inFront place={place} />
      {others.map((other) => (
        <Other key={other.kind} other={other} size={letters.caption} />
      ))}
      <path className={`plate-axis is-${verdict}`} d={linePath(axis)} />
      <Pin {...pin} />
      <Measure annotation={annotation} letters={letters} />
      {children}
      {shift && (
        <path className="plate-sight" d={linePath(axis)} transform={`translate(${n(shift.x)} ${n(shift.y)})`} />
      )}
      <Ring x={handle.at.x + (shift?.x ?? 0)} y={handle.at.y + (shift?.y ?? 0)} />
      {captions.map((caption) => (
        <Words key={caption.text} caption={caption} size={letters.caption} />
      ))}
      {scaleBar && (
        <>
          <path className="plate-dimension" d={[scaleBar.line, ...scaleBar.ticks].map(linePath).join('')} />
          <Words caption={scaleBar.caption} size={letters.caption} />
        </>
      )}
    </svg>
  );
}

import { useId, useRef, type KeyboardEvent, type PointerEvent } from 'react';
import { dialOf, type MovementId } from '../../../model/movements';
import type { CorridorRegions } from '../../../solving/diagnosis/corridor';
import { beginGesture, dialValue, edgeDial, endGesture, nudgeMovement, useDesk } from '../../../store';
import { setDials, toEdge } from '../../../store/desk/whyActions';
import { DIAL_NAMES, sayDial } from '../../../words';
import { isInRegion, sayBothOnPlane } from '../../../words/why/corridor';
import { holdKey } from '../../dials/gesture';
import { regionPath, sideOf, unitOf, type Side } from './mapScale';
import { useRoom } from './useRoom';

interface Props {
  readonly x: MovementId;
  readonly y: MovementId;
  readonly regions: CorridorRegions | undefined;
  readonly isBusy: boolean;
}

const LEFT = 34;
const RIGHT = 10;
const TOP = 30;
const BOTTOM = 52;
/** Height over width of the sheet between the axes. */
const SHAPE = 0.66;
/** It is never lower than this, and leaves room for the sentence over it, px. */
const LEAST = 170;
const BESIDE = TOP + BOTTOM + 72;

/** The map as a drawing in css px, and on it the brass pin that is this swing. */
export function MapPicture({ x, y, regions, isBusy }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const { width, height } = useRoom(frame);
  const units = useDesk(({ document }) => document.units);
  const inner = Math.max(120, width - LEFT - RIGHT);
  const tall = Math.round(Math.min(inner * SHAPE, Math.max(LEAST, height - BESIDE)));
  const across = sideOf(x, LEFT, LEFT + inner, units);
  const upward = sideOf(y, TOP + tall, TOP, units);
  return (
    <div className="map-frame" ref={frame} data-busy={isBusy || undefined}>
      {width > 0 && (
        <>
          <svg className="map-sheet" width={width} height={TOP + tall + BOTTOM} aria-hidden="true">
            <Sheet across={across} upward={upward} regions={regions} />
            <Names across={across} upward={upward} units={units} />
            <PlanPoint across={across} upward={upward} />
          </svg>
          <Pin x={across} y={upward} regions={regions} />
        </>
      )}
    </div>
  );
}

function Sheet({ across, upward, regions }: { across: Side; upward: Side; regions: CorridorRegions | undefined }) {
  const lines = useId();
  const clip = useId();
  const beyond = useId();
  const [left, right] = [LEFT, across.toPx(dialOf(across.id).max)];
  const [top, bottom] = [TOP, upward.toPx(dialOf(upward.id).min)];
  const box = `M${left} ${top}H${right}V${bottom}H${left}Z`;
  const [u0, u1] = across.usual;
  const [v0, v1] = upward.usual;
  const usual = `M${u0} ${v1}H${u1}V${v0}H${u0}Z`;
  return (
    <>
      <defs>
        <clipPath id={clip}>
          <path d={box} />
        </clipPath>
        <pattern id={lines} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(20)">
          <path className="map-both-line" d="M0 0V7" />
        </pattern>
        <pattern id={beyond} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
          <path className="map-beyond-line" d="M0 0V6" />
        </pattern>
      </defs>
      <path className="map-ground" d={box} />
      {regions && (
        <g clipPath={`url(#${clip})`}>
          <path className="map-arm-area" d={regionPath(regions.leadArmParallel.onPlane, across, upward)} />
          <path className="map-shaft-area" d={regionPath(regions.shaftParallel.onPlane, across, upward)} />
          <path className="map-both" d={regionPath(regions.both, across, upward)} />
          <path fill={`url(#${lines})`} fillRule="evenodd" d={regionPath(regions.both, across, upward)} />
          <path className="map-arm" d={regionPath(regions.leadArmParallel.onPlane, across, upward)} />
          <path className="map-shaft" d={regionPath(regions.shaftParallel.onPlane, across, upward)} />
        </g>
      )}
      <path fill={`url(#${beyond})`} fillRule="evenodd" d={box + usual} />
      <path className="map-usual" d={usual} />
      <path className="map-box" d={box} />
    </>
  );
}

function Names({ across, upward, units }: { across: Side; upward: Side; units: { readonly length: 'cm' | 'in' } }) {
  const bottom = upward.toPx(dialOf(upward.id).min);
  const right = across.toPx(dialOf(across.id).max);
  const [h, v] = [DIAL_NAMES[across.id], DIAL_NAMES[upward.id]];
  const name = (side: Side): string => `${DIAL_NAMES[side.id].label.toLowerCase()}, ${unitOf(side.id, units)}`;
  return (
    <>
      {across.ticks.map(({ at, text }) => (
        <g key={at}>
          <path className="map-tick" d={`M${at} ${bottom}v5`} />
          <text className="map-number" x={at} y={bottom + 20} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      {upward.ticks.map(({ at, text }) => (
        <g key={at}>
          <path className="map-tick" d={`M${LEFT} ${at}h-5`} />
          <text className="map-number" x={LEFT - 8} y={at + 5} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      <text className="map-end" x={LEFT} y={bottom + 42}>
        {h.low}
      </text>
      <text className="map-name" x={(LEFT + right) / 2} y={bottom + 42} textAnchor="middle">
        {name(across)}
      </text>
      <text className="map-end" x={right} y={bottom + 42} textAnchor="end">
        {h.high}
      </text>
      <text className="map-name" x={0} y={18}>
        {name(upward)}
      </text>
      <text className="map-end" x={right} y={18} textAnchor="end">
        {v.high}, upward
      </text>
      <path
        className="map-reference"
        d={`M${across.toPx(dialOf(across.id).neutral)} ${upward.toPx(dialOf(upward.id).neutral)}m-8 0h16m-8 -8v16`}
      />
    </>
  );
}

/** Where the chosen plan leads, as far as these two movements show it. */
function PlanPoint({ across, upward }: { across: Side; upward: Side }) {
  const plan = useDesk(({ document }) => document.plan?.movements);
  if (!plan) return null;
  const at = (side: Side): number => side.toPx(dialValue(plan, side.id) * dialOf(side.id).edgeUnit);
  const [x, y] = [at(across), at(upward)];
  return (
    <g className="map-plan">
      <circle cx={x} cy={y} r="11" />
      <circle cx={x} cy={y} r="5" />
      <text x={x} y={y - 16} textAnchor="middle">
        plan
      </text>
    </g>
  );
}

/** This swing on the map. A finger anywhere moves it there, arrow keys by steps; a drag is one undo step. */
function Pin({ x, y, regions }: { x: Side; y: Side; regions: CorridorRegions | undefined }) {
  const px = useDesk(({ document }) => dialValue(document.movements, x.id));
  const py = useDesk(({ document }) => dialValue(document.movements, y.id));
  const units = useDesk(({ document }) => document.units);
  const held = useRef<{ pointer: number; gesture: ReturnType<typeof beginGesture> } | undefined>(undefined);
  const [u, v] = [px * dialOf(x.id).edgeUnit, py * dialOf(y.id).edgeUnit];
  const [left, top] = [x.toPx(u), y.toPx(v)];

  const moveTo = (event: PointerEvent<HTMLElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    setDials([
      [x.id, toEdge(x.id, x.fromPx(event.clientX - box.left))],
      [y.id, toEdge(y.id, y.fromPx(event.clientY - box.top))],
    ]);
  };
  const start = (event: PointerEvent<HTMLElement>): void => {
    if (event.button !== 0 || held.current) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    held.current = { pointer: event.pointerId, gesture: beginGesture() };
    moveTo(event);
  };
  const end = (event: PointerEvent<HTMLElement>): void => {
    if (held.current?.pointer !== event.pointerId) return;
    endGesture(held.current.gesture);
    held.current = undefined;
  };
  const press = (event: KeyboardEvent<HTMLElement>): void => {
    const step = STEPS[event.key];
    if (!step) return;
    holdKey(event);
    const size = event.shiftKey ? LARGE : 1;
    nudgeMovement(step[0] === 'x' ? x.id : y.id, step[1] * size);
    event.preventDefault();
  };
  const both = regions && sayBothOnPlane(isInRegion([u, v], regions.both));
  const spoken = `${sayDial(x.id, px, units).spoken}; ${sayDial(y.id, py, units).spoken}. ${both ?? ''}`;
  return (
    <div
      className="map-touch"
      onPointerDown={start}
      onPointerMove={(event) => held.current?.pointer === event.pointerId && moveTo(event)}
      onPointerUp={end}
      onPointerCancel={end}
      onLostPointerCapture={end}
    >
      <div
        className="map-pin"
        style={{ left, top }}
        // A native range has one direction; this pin has two.
        // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role
        role="slider"
        tabIndex={0}
        aria-label={`This swing: ${DIAL_NAMES[x.id].label} and ${DIAL_NAMES[y.id].label}`}
        aria-valuemin={edgeDial(x.id).min}
        aria-valuemax={edgeDial(x.id).max}
        aria-valuenow={px}
        aria-valuetext={spoken}
        onKeyDown={press}
      />
      <span
        className="map-now"
        style={{ left, top }}
        data-side={left > x.toPx(0.8 * dialOf(x.id).max) ? 'left' : 'right'}
      >
        now
      </span>
    </div>
  );
}

const LARGE = 5;
const STEPS: Readonly<Record<string, readonly ['x' | 'y', number]>> = {
  ArrowLeft: ['x', -1],
  ArrowRight: ['x', 1],
  ArrowDown: ['y', -1],
  ArrowUp: ['y', 1],
  PageDown: ['y', -LARGE],
  PageUp: ['y', LARGE],
};

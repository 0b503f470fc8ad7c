import { HANDLE_RADIUS, PIN_RADIUS, REGISTER_CROSS, type OtherLine } from '../annotation/annotation';
import type { Dimension } from '../annotation/dimension';
import type { Point, Segment } from '../plate/frame';
import type { Caption, Lettering } from '../annotation/lettering';
import type { PlateDrawing } from '../plate/plateDrawing';
import { areaPath, linePath, tenth } from './paths';
import { path, transformOf, type Shape } from './shape';

/** A plate from the back to the front: `under` and `over` the marks of coach and player. */
export interface Layers {
  readonly under: readonly Shape[];
  readonly over: readonly Shape[];
}

/** Ids of the two patterns on the page. */
export interface Patterns {
  readonly hatch: string;
  readonly dots: string;
}

const linesPath = (lines: readonly Segment[]): string => lines.map(linePath).join('');
const movedBy = ({ x, y }: Point, scale = 1): string => transformOf([scale, 0, 0, scale, tenth(x), tenth(y)]);

const pulledBy = ({ x, y }: Point): string => `translate(${tenth(x)} ${tenth(y)})`;

/** Words and the leader to what they name. */
function words(key: string, { text, at, anchor, leader }: Caption, size: number, kind = ''): Shape[] {
  const [x, y] = [tenth(at.x), tenth(at.y)];
  const name = `plate-caption ${kind}`;
  const attributes = ['class', name, 'x', x, 'y', y, 'text-anchor', anchor, 'font-size', tenth(size)];
  const label: Shape = { key, tag: 'text', attributes, text };
  return leader ? [path(`${key} leader`, 'plate-leader', linePath(leader)), label] : [label];
}

const otherShapes = ({ kind, line, caption }: OtherLine, size: number): Shape[] => [
  path(kind, `plate-other is-${kind}`, linePath(line)),
  ...(caption ? words(`${kind} name`, caption, size, `is-${kind}`) : []),
];

const PIN: readonly Shape[] = [
  { key: 'disc', tag: 'circle', attributes: ['r', PIN_RADIUS] },
  {
    key: 'cross',
    tag: 'path',
    attributes: ['d', `M${-REGISTER_CROSS} 0H${REGISTER_CROSS}M0 ${-REGISTER_CROSS}V${REGISTER_CROSS}`],
  },
];
const RING: readonly Shape[] = [
  { key: 'ring', tag: 'circle', attributes: ['r', HANDLE_RADIUS] },
  { key: 'eye', tag: 'circle', attributes: ['class', 'plate-ring-eye', 'r', 2.4] },
];

function measure(
  { line, ticks, figure }: Dimension,
  extensions: readonly Segment[],
  verdict: string,
  letters: Lettering,
): Shape[] {
  const { number, unit, at } = figure;
  const name = `plate-figure is-${verdict}`;
  const [x, y] = [tenth(at.x), tenth(at.y)];
  return [
    path('dimension', 'plate-dimension', linesPath([...extensions, line])),
    path('ticks', 'plate-tick', linesPath(ticks)),
    {
      key: 'figure',
      tag: 'text',
      attributes: ['class', name, 'x', x, 'y', y, 'font-size', tenth(letters.figure)],
      text: number,
      inside: [
        {
          key: 'unit',
          tag: 'tspan',
          attributes: ['class', 'plate-unit', 'dx', 3, 'font-size', tenth(letters.unit)],
          text: unit,
        },
      ],
    },
  ];
}

/** The solids behind the pattern or in front of it, where the frame has them: their contours are in tenths of a unit. */
const solidsOf = ({ frame, parts }: PlateDrawing, inFront: boolean): Shape => ({
  key: inFront ? 'in front' : 'behind',
  tag: 'g',
  attributes: ['transform', movedBy({ x: frame.x0, y: frame.y0 }, 0.1)],
  inside: parts.filter((part) => part.isInFront === inFront),
});

/** Everything on a plate, in its units. `pulled`: how far the ring was pulled along its line's normal. */
export function layersOf(
  drawing: PlateDrawing,
  letters: Lettering,
  pulled: number | undefined,
  { hatch, dots }: Patterns,
): Layers {
  const { annotation } = drawing;
  const { verdict, corridor, edges, zone, axis, pin, handle, captions, scaleBar, others } = annotation;
  const { dimension, extensions } = annotation;
  const fill = verdict === 'steep' ? `url(#${hatch})` : verdict === 'shallow' ? `url(#${dots})` : 'none';
  const shift = pulled === undefined ? undefined : { x: handle.direction.x * pulled, y: handle.direction.y * pulled };
  const ring = { x: handle.at.x + (shift?.x ?? 0), y: handle.at.y + (shift?.y ?? 0) };
  const size = letters.caption;
  return {
    under: [
      path('corridor', 'plate-corridor', areaPath(corridor)),
      solidsOf(drawing, false),
      path('edges', 'plate-corridor-edge', linesPath(edges)),
      { key: 'zone', tag: 'path', attributes: ['d', areaPath(zone), 'fill', fill] },
      solidsOf(drawing, true),
      ...others.flatMap((other) => otherShapes(other, size)),
      path('axis', `plate-axis is-${verdict}`, linePath(axis)),
      { key: 'pin', tag: 'g', attributes: ['class', 'plate-pin', 'transform', movedBy(pin)], inside: PIN },
      ...(dimension ? measure(dimension, extensions, verdict, letters) : []),
    ],
    over: [
      ...(shift
        ? [
            {
              key: 'sight',
              tag: 'path',
              attributes: ['class', 'plate-sight', 'd', linePath(axis), 'transform', pulledBy(shift)],
            } as const,
          ]
        : []),
      { key: 'ring', tag: 'g', attributes: ['class', 'plate-ring', 'transform', movedBy(ring)], inside: RING },
      ...captions.flatMap((caption) => words(caption.text, caption, size)),
      ...(scaleBar
        ? [
            path('scale bar', 'plate-dimension', linesPath([scaleBar.line, ...scaleBar.ticks])),
            ...words('scale', scaleBar.caption, size),
          ]
        : []),
    ],
  };
}

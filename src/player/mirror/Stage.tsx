import { useEffect, useRef, useState, type PointerEvent } from 'react';
import { fitContour, type Lines, type Sights, type Stand } from './contour';
import { drawContour } from './drawContour';

interface Props {
  readonly sights: Sights | undefined;
  readonly stand: Stand;
  readonly lines: Lines;
  /** Absent while the player does not fit the contour to himself. */
  readonly onLines: ((lines: Lines) => void) | undefined;
  readonly stream: MediaStream | undefined;
  readonly isMirrored: boolean;
  readonly isLeft: boolean;
  readonly board: string;
  readonly label: string;
}

/** The camera's picture, or paper, with the contour over it. The contour is drawn when it changes; the browser draws the rest. */
export function Stage({ sights, stand, lines, onLines, stream, isMirrored, isLeft, board, label }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const video = useRef<HTMLVideoElement>(null);
  const [{ width, height }, setSize] = useState({ width: 0, height: 0 });

  useEffect(() => {
    const observer = new ResizeObserver(([{ contentRect }]) =>
      setSize({ width: contentRect.width, height: contentRect.height }),
    );
    observer.observe(place.current!);
    return () => observer.disconnect();
  }, []);

  useEffect(() => {
    const shown = video.current;
    if (!shown || !stream) return undefined;
    shown.srcObject = stream;
    // A page that hides meanwhile breaks this off; the camera has ended then.
    shown.play().catch(() => undefined);
    return () => {
      shown.srcObject = null;
    };
  }, [stream]);

  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!canvas.current || !context || width === 0) return;
    const ratio = Math.min(devicePixelRatio, 2);
    canvas.current.width = Math.round(width * ratio);
    canvas.current.height = Math.round(height * ratio);
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    const contour = sights && fitContour(sights, stand, { width, height }, lines, isMirrored !== isLeft);
    if (!contour) return;
    const style = getComputedStyle(canvas.current);
    const color = (name: string): string => style.getPropertyValue(name).trim();
    const pens = { ink: color('--ink'), paper: color('--plate') };
    drawContour(context, contour, stream ? pens : { ...pens, fill: color('--wood') });
  }, [sights, stand, lines, isMirrored, isLeft, width, height, stream, board]);

  return (
    <div className="mirror-stage" ref={place}>
      {stream && <video ref={video} muted playsInline data-mirrored={isMirrored || undefined} aria-hidden="true" />}
      {/* An img element cannot be drawn on. */}
      {/* oxlint-disable-next-line jsx-a11y/prefer-tag-over-role */}
      <canvas ref={canvas} role="img" aria-label={label} />
      {onLines && (
        <>
          <Line name="head" lines={lines} height={height} onLines={onLines} />
          <Line name="feet" lines={lines} height={height} onLines={onLines} />
        </>
      )}
    </div>
  );
}

/** Shares of the height that a line may take. */
export const LINE_LIMITS = { head: { min: 0.05, max: 0.5 }, feet: { min: 0.55, max: 0.98 } } as const;

interface LineProps {
  readonly name: keyof Lines;
  readonly lines: Lines;
  readonly height: number;
  readonly onLines: (lines: Lines) => void;
}

/** A line to drag. Two sliders beside the stage do the same for keyboard and screen reader. */
function Line({ name, lines, height, onLines }: LineProps) {
  const grip = useRef<{ y: number; from: number }>(undefined);
  const { min, max } = LINE_LIMITS[name];
  const move = (event: PointerEvent): void => {
    if (!grip.current || height === 0) return;
    const share = grip.current.from + (event.clientY - grip.current.y) / height;
    onLines({ ...lines, [name]: Math.min(max, Math.max(min, share)) });
  };
  return (
    <div
      className="mirror-line"
      data-line={name}
      aria-hidden="true"
      style={{ top: `${lines[name] * 100}%` }}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        grip.current = { y: event.clientY, from: lines[name] };
      }}
      onPointerMove={move}
      onPointerUp={() => (grip.current = undefined)}
      onPointerCancel={() => (grip.current = undefined)}
    >
      <span>{name === 'head' ? 'Head' : 'Feet'}</span>
    </div>
  );
}

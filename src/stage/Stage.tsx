import { useLayoutEffect, useRef, useState } from 'react';
import { current, useWritten } from '../store';
import { Chips } from './Chips';
import { cameraStore } from './camera/cameraStore';
import { Picture } from './Picture';
import { sayPicture } from '../words/swing/picture';
import './stage.css';
import { StickFigure } from './StickFigure';

type Layout = 'row' | 'column' | 'one';
type Drawing = 'drawing' | 'refused' | 'lost';

const NOTES = {
  refused: 'This browser draws no 3D picture. The stick figure shows the same swing.',
  lost: 'The 3D picture is away for a moment. The stick figure shows the same swing.',
} as const;

/** Kept free for chips, and on the left for what the panels pin there. */
const INSETS = {
  row: { left: 96, right: 14, top: 12, bottom: 68 },
  column: { left: 172, right: 24, top: 12, bottom: 12 },
  one: { left: 120, right: 8, top: 8, bottom: 8 },
  /** Taller than wide: the slips stand above the picture. */
  tall: { left: 14, right: 14, top: 124, bottom: 12 },
} as const;

/** A row of chips needs this much width, a column of them this much height, px. */
const ROOM = { row: { width: 460, height: 260 }, column: { width: 700, height: 316 } } as const;

/** The views stand below the picture; beside it where it is wide and low; behind one button where neither fits. */
function layoutOf(width: number, height: number): Layout {
  if (width >= ROOM.column.width && height >= ROOM.column.height && width > height * 1.9) return 'column';
  return width < ROOM.row.width || height < ROOM.row.height ? 'one' : 'row';
}

/** Whether the browser gives out a WebGL 2 context at all; asked once, on a canvas of its own. */
function drawsWebGL(): boolean {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return context !== null;
  } catch {
    return false;
  }
}

/** The stage: the figure in 3D with its captions and views, or a stick figure where 3D is refused. The only canvas. */
export function Stage() {
  const [drawing, setDrawing] = useState<Drawing>(() => (drawsWebGL() ? 'drawing' : 'refused'));
  const [layout, setLayout] = useState<Layout>('row');
  const picture = useRef<HTMLDivElement>(null);
  const overlay = useRef<HTMLDivElement>(null);
  const image = useRef<HTMLDivElement>(null);
  useWritten(
    (state) => sayPicture(current(), state),
    (sentence) => image.current?.setAttribute('aria-label', sentence),
  );

  useLayoutEffect(() => {
    const element = picture.current!;
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = element;
      const next = layoutOf(width, height);
      setLayout(next);
      const insets = INSETS[next === 'one' && height > width ? 'tall' : next];
      if (cameraStore.getState().insets !== insets) cameraStore.setState({ insets });
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, []);

  return (
    <section className="stage" aria-label="Stage" data-layout={layout} data-drawing={drawing}>
      <div
        ref={picture}
        className="stage-picture"
        // A widget of its own: arrow keys turn the picture, plus and minus zoom.
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
        tabIndex={0}
        role="application"
        aria-label="Swing in 3D. Arrow keys turn it, plus and minus zoom."
      >
        {/* An img element cannot hold the canvas. */}
        {/* oxlint-disable-next-line jsx-a11y/prefer-tag-over-role */}
        <div className="stage-image" role="img" ref={image}>
          {drawing !== 'refused' && <Picture overlay={overlay} keyed={picture} onState={setDrawing} />}
        </div>
        <div ref={overlay} className="stage-captions" aria-hidden="true" hidden={drawing !== 'drawing'}>
          <svg>
            <path data-caption="traceLeader" />
            <path data-caption="glassLeader" />
          </svg>
          <span className="stage-caption" data-caption="trace">
            head trace
          </span>
          <span className="stage-caption" data-caption="glass">
            address
            <br />
            shaft plane
          </span>
          <div className="stage-legends">
            <span className="stage-legend stage-legend-reference" data-caption="reference" hidden>
              reference
            </span>
            <span className="stage-legend stage-legend-ghost" data-caption="ghost" hidden />
            <span className="stage-legend stage-legend-flight" data-caption="flight" hidden>
              flight drawn 1:80
            </span>
          </div>
        </div>
        {drawing !== 'drawing' && <StickFigure note={NOTES[drawing]} />}
      </div>
      {/* Without 3D there is nothing to look at from elsewhere. */}
      {drawing !== 'refused' && <Chips layout={layout} />}
    </section>
  );
}

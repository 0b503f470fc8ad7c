import { useLayoutEffect, useRef, useState } from 'react';
import { current, useWritten } from '../store';
import { cameraStore } from './camera/cameraStore';
import { Picture } from './Picture';
import { NO_PICTURE, PICTURE_KEYS, sayPicture } from '../words/swing/picture';
import './stage.css';
import { ViewList } from './ViewList';
import { StickFigure } from './StickFigure';

type Layout = 'list' | 'small';
type Drawing = 'drawing' | 'refused' | 'lost';

/** Kept free for what stands on the picture: the list of views at the left, the caption at the foot. */
const INSETS = {
  list: { left: 132, right: 14, top: 12, bottom: 30 },
  small: { left: 8, right: 8, top: 8, bottom: 20 },
  /** Small and high: what is said of the ball stands above the swing, not on it. */
  tall: { left: 8, right: 8, top: 100, bottom: 66 },
  /** Small and low, as over a phone's drawer: what is said of the ball stands at the left, the buttons at the right. */
  low: { left: 152, right: 74, top: 8, bottom: 20 },
} as const;

/** The list needs this much of the picture, px. */
const ROOM = { width: 400, height: 500 } as const;

/** The views stand in a list at the picture's left edge, or behind buttons where it is small. */
const layoutOf = (width: number, height: number): Layout =>
  width < ROOM.width || height < ROOM.height ? 'small' : 'list';

/** Below this height, in px, what is said of the ball stands beside the swing if so much width is left. */
const LOW = { height: 260, width: 340 } as const;
const smallOf = (width: number, height: number): keyof typeof INSETS => {
  if (height >= ROOM.height) return 'tall';
  return height < LOW.height && width >= LOW.width ? 'low' : 'small';
};

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
  const [layout, setLayout] = useState<Layout>('list');
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
      const insets = INSETS[next === 'list' ? next : smallOf(width, height)];
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
        aria-label={PICTURE_KEYS}
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
        {drawing !== 'drawing' && <StickFigure note={NO_PICTURE[drawing]} />}
      </div>
      {/* Without 3D there is nothing to look at from elsewhere. */}
      {drawing !== 'refused' && <ViewList isSmall={layout === 'small'} />}
    </section>
  );
}

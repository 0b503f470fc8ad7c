import { useEffect, useRef, useState } from 'react';
import type { Pixel } from '../../film/marks';
import { useDesk } from '../../store';
import { filmStore, useFilm, type FilmState } from './filmStore';
import { setMark, undoMark } from './filmActions';
import { MARKS } from './filmMarks';
import { FilmOverlay } from './FilmOverlay';
import { showFrame } from './frames/showFrame';

/** How near a pin a finger takes hold of it, px of the screen: less while a mark is still to be made, which may lie close by. */
const HOLD = { moving: 26, making: 9 } as const;
const MOST = 8;

interface Zoom {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}
const WHOLE: Zoom = { scale: 1, x: 0, y: 0 };

/** The frame itself: a tap makes the active mark, a drag moves a pin, two fingers or the wheel enlarge. */
export function FilmPicture() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const box = useRef<HTMLDivElement>(null);
  const fingers = useRef(new Map<number, readonly [number, number]>());
  const pinch = useRef<{ span: number; zoom: Zoom; middle: readonly [number, number] } | undefined>(undefined);
  const [zoom, setZoom] = useState(WHOLE);
  const video = useFilm((film) => film.video);
  const share = useFilm(({ view }) => view.film);
  const isLeft = useDesk(({ document }) => document.player.handed === 'left');
  // Past React, which comes after the picture.
  useEffect(() => {
    const show = (film: FilmState): void => {
      if (canvas.current) showFrame(canvas.current, film);
    };
    show(filmStore.getState());
    return filmStore.subscribe((film, before) => {
      if (film.glance !== before.glance || film.picture !== before.picture) show(film);
    });
  }, []);
  if (!video) return null;
  const { w, h } = video.info;

  /** Where on the picture a pointer is, px of the film, and how many of them a pixel of the screen is. */
  const place = (event: { clientX: number; clientY: number }): { readonly at: Pixel; readonly px: number } => {
    const { left, top, width } = canvas.current!.getBoundingClientRect();
    const px = w / width;
    return { at: [(event.clientX - left) * px, (event.clientY - top) * px], px };
  };
  const zoomAbout = (from: Zoom, by: number, [x, y]: readonly [number, number]): void => {
    const rect = box.current!.getBoundingClientRect();
    const [cx, cy] = [x - rect.left - rect.width / 2, y - rect.top - rect.height / 2];
    const scale = Math.max(1, Math.min(MOST, from.scale * by));
    const k = scale / from.scale;
    setZoom(scale === 1 ? WHOLE : { scale, x: cx - k * (cx - from.x), y: cy - k * (cy - from.y) });
  };
  const both = (): { readonly span: number; readonly middle: readonly [number, number] } => {
    const [a, b] = [...fingers.current.values()];
    return { span: Math.hypot(a[0] - b[0], a[1] - b[1]), middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] };
  };
  return (
    // The picture takes taps; everything done here can be done by the list, the arrows and typed numbers too.
    // oxlint-disable-next-line jsx-a11y/no-static-element-interactions
    <div
      className="film-picture"
      ref={box}
      onWheel={(event) => zoomAbout(zoom, Math.exp(-event.deltaY / 400), [event.clientX, event.clientY])}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        fingers.current.set(event.pointerId, [event.clientX, event.clientY]);
        if (fingers.current.size === 2) {
          pinch.current = { ...both(), zoom };
          filmStore.setState({ touch: undefined });
          return;
        }
        const { at, px } = place(event);
        const { sheet, place: shown, frame, active } = filmStore.getState();
        const marked = sheet[shown];
        const isMaking = active !== undefined && !marked?.points[active];
        const reach = (isMaking ? HOLD.making : HOLD.moving) * px;
        const held =
          marked?.frame === frame
            ? MARKS[shown].find(({ id }) => {
                const pin = marked.points[id];
                return pin && Math.hypot(pin.at[0] - at[0], pin.at[1] - at[1]) < reach;
              })
            : undefined;
        filmStore.setState({ touch: at, ...(held && { active: held.id }) });
      }}
      onPointerMove={(event) => {
        if (!fingers.current.has(event.pointerId)) return;
        fingers.current.set(event.pointerId, [event.clientX, event.clientY]);
        const start = pinch.current;
        if (start && fingers.current.size === 2) {
          const { span, middle } = both();
          zoomAbout(start.zoom, span / start.span, middle);
        } else if (!start) filmStore.setState({ touch: place(event).at });
      }}
      onPointerUp={(event) => {
        fingers.current.delete(event.pointerId);
        const wasPinch = pinch.current !== undefined;
        if (fingers.current.size === 0) pinch.current = undefined;
        filmStore.setState({ touch: undefined });
        if (!wasPinch) setMark(place(event).at);
      }}
      onPointerCancel={(event) => {
        fingers.current.delete(event.pointerId);
        if (fingers.current.size === 0) pinch.current = undefined;
        filmStore.setState({ touch: undefined });
      }}
      onKeyDown={(event) => {
        if (event.key === 'z' && (event.ctrlKey || event.metaKey)) {
          event.preventDefault();
          event.stopPropagation();
          undoMark();
        }
      }}
    >
      <div
        className="film-sheet"
        style={{
          aspectRatio: `${w} / ${h}`,
          ['--film-aspect' as string]: w / h,
          transform: `translate(${zoom.x}px, ${zoom.y}px) scale(${zoom.scale})`,
        }}
      >
        <canvas ref={canvas} style={{ opacity: share }} aria-label="Frame of the film" />
        <FilmOverlay w={w} h={h} isLeft={isLeft} />
      </div>
      <p className="film-hint" aria-hidden="true">
        Pinch enlarges
      </p>
    </div>
  );
}

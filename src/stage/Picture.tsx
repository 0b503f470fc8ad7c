import { Component, useEffect, useRef, useState, type ReactNode, type RefObject } from 'react';
import { mountScene } from '../scene/mountScene';
import { readTheme } from '../scene/setting/theme';
import { useDesk } from '../store';
import { DeskScene } from './DeskScene';

interface Props {
  readonly overlay: RefObject<HTMLElement | null>;
  readonly keyed: RefObject<HTMLElement | null>;
  readonly onState: (state: 'drawing' | 'refused' | 'lost') => void;
}

/** The canvas with the desk's scene. Stays mounted while the context is lost, so that the picture returns with it. */
export function Picture({ overlay, keyed, onState }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const [root, setRoot] = useState<ReturnType<typeof mountScene>>();
  const [failed, setFailed] = useState<{ readonly error: unknown }>();
  const board = useDesk((state) => state.document.board);

  useEffect(() => {
    const mounted = openCanvas(place.current!, onState);
    setRoot(mounted.root);
    return () => {
      setRoot(undefined);
      mounted.close();
    };
  }, [onState]);

  // After the effects of all who stand above: one of them gives the page the board's colours.
  useEffect(() => {
    if (!root) return;
    root.render(
      <Watched onFailure={(error) => setFailed({ error })}>
        <DeskScene board={board} theme={readTheme(board)} overlay={overlay.current!} keyed={keyed.current!} />
      </Watched>,
    );
  }, [root, board, overlay, keyed]);

  if (failed) throw failed.error;
  return <div ref={place} className="stage-canvas" />;
}

/** A canvas of its own each time: one that has lost its context for good gives out no other. */
function openCanvas(place: HTMLElement, onState: Props['onState']) {
  const canvas = document.createElement('canvas');
  place.append(canvas);
  canvas.addEventListener('webglcontextlost', () => canvas.isConnected && onState('lost'));
  canvas.addEventListener('webglcontextrestored', () => onState('drawing'));
  const close = [(): void => canvas.remove()];
  try {
    const { clientWidth: width, clientHeight: height } = place;
    let setSize: ((width: number, height: number) => void) | undefined;
    const root = mountScene(canvas, {
      width,
      height,
      dpr: [1, 2],
      frameloop: 'demand',
      renderer: {},
      onCreated: (state) => (setSize = state.setSize),
    });
    const observer = new ResizeObserver(([{ contentRect }]) => setSize?.(contentRect.width, contentRect.height));
    observer.observe(place);
    close.unshift(
      () => observer.disconnect(),
      () => root.unmount(),
    );
    return { root, close: () => close.forEach((end) => end()) };
  } catch {
    onState('refused');
    return { root: undefined, close: () => close.forEach((end) => end()) };
  }
}

/** Hands what breaks inside the canvas, which has a React tree of its own, to the page's. */
class Watched extends Component<{ readonly onFailure: (error: unknown) => void; readonly children: ReactNode }> {
  override state = { hasFailed: false };
  static getDerivedStateFromError = () => ({ hasFailed: true });
  override componentDidCatch(error: unknown): void {
    this.props.onFailure(error);
  }
  override render(): ReactNode {
    return this.state.hasFailed ? null : this.props.children;
  }
}

import { useRef, useState } from 'react';
import { desk } from '../../store';
import { sayWho } from '../Status';
import { showing, subjectNow } from './work';

interface Frame {
  readonly url: string;
  readonly seconds: number;
}

/** One frame of each shot, and of each stop at a checkpoint: how the clip will look, before it is made. */
export function Preview({ disabled }: { disabled: boolean }) {
  const [frames, setFrames] = useState<readonly Frame[]>([]);
  const [length, setLength] = useState<number>();
  const isDrawing = useRef(false);

  const draw = async (): Promise<void> => {
    if (disabled || isDrawing.current) return;
    isDrawing.current = true;
    try {
      const [{ openReel }, { pixelSize }, { keyMoments }] = await Promise.all([
        import('../../export/makeClip'),
        import('../../export/formats'),
        import('../../export/storyboard'),
      ]);
      const { wish } = showing.getState();
      const { width, height } = pixelSize(wish.shape, 'draft');
      const reel = await openReel(
        await subjectNow(),
        wish,
        { width: width * 2, height: height * 2 },
        wish.fps,
        sayWho(desk.getState().document),
      );
      try {
        setLength(reel.storyboard.seconds);
        setFrames(
          keyMoments(reel.storyboard).map((seconds) => {
            reel.paint(Math.round(seconds * wish.fps));
            return { url: reel.canvas.toDataURL('image/png'), seconds };
          }),
        );
      } finally {
        reel.dispose();
      }
    } finally {
      isDrawing.current = false;
    }
  };

  return (
    <div className="preview">
      <button type="button" className="text-button" aria-disabled={disabled} onClick={() => void draw()}>
        {frames.length > 0 ? 'Draw the storyboard again' : 'Storyboard'}
      </button>
      {length !== undefined && <span className="fine">{length.toFixed(1)} s in all</span>}
      {frames.length > 0 && (
        <ol className="preview-frames" aria-label="Storyboard">
          {frames.map(({ url, seconds }) => (
            <li key={seconds}>
              <img src={url} alt={`Frame at ${seconds.toFixed(1)} seconds`} />
              <span className="fine">{seconds.toFixed(1)} s</span>
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}

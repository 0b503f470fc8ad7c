import { useEffect, useRef, useState } from 'react';
import { sayNoStoryboard } from '../../../words/showing/errorMessages';
import { desk } from '../../../store';
import { sayWho } from '../../../words/showing/who';
import { showing, subjectNow } from '../task/showingStore';

interface Frame {
  readonly url: string;
  readonly seconds: number;
}
interface Drawn {
  readonly seconds: number;
  readonly frames: readonly Frame[];
}

const letGo = (drawn: Drawn | undefined): void => drawn?.frames.forEach(({ url }) => URL.revokeObjectURL(url));

/** One frame of each shot, and of each stop at a checkpoint: how the clip will look, before it is made. */
export function Preview({ disabled }: { disabled: boolean }) {
  const [drawn, setDrawn] = useState<Drawn>();
  const [note, setNote] = useState('');
  const control = useRef<AbortController>(null);
  useEffect(() => () => control.current?.abort(), []);
  useEffect(() => () => letGo(drawn), [drawn]);

  const draw = async (): Promise<void> => {
    if (disabled) return;
    control.current?.abort();
    const own = new AbortController();
    control.current = own;
    setNote('Drawing …');
    try {
      const { sketchClip } = await import('../../../export/clip/makeClip');
      const who = sayWho(desk.getState().document);
      const { seconds, frames } = await sketchClip(await subjectNow(), showing.getState().wish, who, own.signal);
      setDrawn({
        seconds,
        frames: frames.map((frame) => ({ seconds: frame.seconds, url: URL.createObjectURL(frame.picture) })),
      });
      setNote(`${seconds.toFixed(1)} s in all`);
    } catch (error) {
      if (!own.signal.aborted) setNote(sayNoStoryboard(error));
    }
  };

  return (
    <div className="preview">
      <button type="button" className="text-button" aria-disabled={disabled} onClick={() => void draw()}>
        {drawn ? 'Draw the storyboard again' : 'Storyboard'}
      </button>
      <output className="fine">{note}</output>
      {drawn && (
        <ol className="preview-frames" aria-label="Storyboard">
          {drawn.frames.map(({ url, seconds }) => (
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

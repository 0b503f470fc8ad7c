import { useEffect, useRef, useState } from 'react';
import { sayNoStoryboard } from '../../../words/showing/errorMessages';
import { desk } from '../../../store';
import { sayWho } from '../../../words/showing/who';
import { readOwnLook } from '../own/ownLook';
import { showing, subjectNow } from '../task/showingStore';

interface Frame {
  readonly url: string;
  readonly seconds: number;
}
interface Drawn {
  readonly seconds: number;
  readonly frames: readonly Frame[];
  readonly strip: readonly Frame[];
}

const letGo = (drawn: Drawn | undefined): void =>
  [...(drawn?.frames ?? []), ...(drawn?.strip ?? [])].forEach(({ url }) => URL.revokeObjectURL(url));

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
      const { seconds, frames, strip } = await sketchClip(
        await subjectNow(),
        showing.getState().wish,
        who,
        await readOwnLook(),
        own.signal,
      );
      const toFrame = (frame: { readonly seconds: number; readonly picture: Blob }): Frame => ({
        seconds: frame.seconds,
        url: URL.createObjectURL(frame.picture),
      });
      setDrawn({ seconds, frames: frames.map(toFrame), strip: strip.map(toFrame) });
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
      {drawn && <Scrub strip={drawn.strip} />}
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

/** The clip to go through with a finger, a picture every half second. */
function Scrub({ strip }: { strip: readonly Frame[] }) {
  const [at, setAt] = useState(0);
  const frame = strip[Math.min(at, strip.length - 1)];
  if (!frame) return null;
  const said = `${frame.seconds.toFixed(1)} seconds`;
  return (
    <div className="preview-scrub">
      <img src={frame.url} alt={`The clip at ${said}`} />
      <input
        type="range"
        min={0}
        max={strip.length - 1}
        step={1}
        value={at}
        aria-label="Go through the clip"
        aria-valuetext={said}
        onChange={(event) => setAt(event.currentTarget.valueAsNumber)}
      />
    </div>
  );
}

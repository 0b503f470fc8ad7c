import { useShowing } from './useShowing';
import { stop } from './showingStore';

const sayLeft = (seconds: number | undefined): string =>
  seconds === undefined ? '' : seconds < 1.5 ? ', nearly done' : `, about ${Math.ceil(seconds)} s left`;

/** What is being made, how far it is, and a way to stop it; or why the last one did not come to be. */
export function WorkNote() {
  const progress = useShowing((state) => state.progress);
  const excuse = useShowing((state) => state.excuse);
  return (
    <>
      {progress && (
        <div className="work">
          <p className="work-doing">
            {progress.doing}
            {sayLeft(progress.secondsLeft)}
          </p>
          <progress aria-label={progress.doing.replace(/: .*/, '')} value={progress.share} max={1} />
          <button type="button" className="plain" onClick={stop}>
            Stop
          </button>
        </div>
      )}
      <output className={excuse ? 'work-excuse' : 'unseen'}>
        {progress ? progress.doing.replace(/: .*/, '') : (excuse ?? '')}
      </output>
    </>
  );
}

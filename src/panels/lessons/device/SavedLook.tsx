import { useState } from 'react';
import { useKeptLook } from '../../showing/own/ownLook';
import { LOOK_IN_FILE, LOOK_IS_HERE } from '../../../words/showing/forms';
import { readSavedLook, takeSavedLook } from '../../showing/own/savedLook';

/** The coach's own colour and mark in a file that saved everything, to be taken over. `text`: as they were kept. */
export function SavedLook({ text }: { text: string | undefined }) {
  const kept = useKeptLook();
  const [problem, setProblem] = useState<string>();
  const [isTaken, setIsTaken] = useState(false);
  const saved = readSavedLook(text);
  if (!saved) return null;
  const fault = 'fault' in saved ? saved.fault : problem;
  if (fault !== undefined) return <p role="alert">{fault}</p>;
  if (isTaken || JSON.stringify(kept) === text) return <p>{LOOK_IS_HERE}</p>;
  return (
    <>
      <p>{LOOK_IN_FILE}</p>
      <div className="lesson-actions">
        <button
          type="button"
          className="plain"
          onClick={() =>
            'look' in saved &&
            void takeSavedLook(saved.look).then((fault) => {
              setProblem(fault);
              setIsTaken(fault === undefined);
            })
          }
        >
          Take colour and mark
        </button>
      </div>
    </>
  );
}

import { useId, useState } from 'react';
import { readMark } from './markFile';
import { keepLook, useKeptLook } from './ownLook';
import { MARK_NOT_READ, OWN_LOOK_KEPT } from '../../../words/showing/forms';

/** Shown in the field while no colour is chosen: the ink of the light board. */
const INK = '#211d18';

/** The coach's own colour and mark on hand-outs: taken from a file, kept on this device, and wiped when they are taken off. */
export function OwnLookForm() {
  const { colour, mark } = useKeptLook();
  const [problem, setProblem] = useState('');
  const id = useId();
  const take = async (file: File): Promise<void> => {
    try {
      setProblem(keepLook({ mark: await readMark(file) }) ?? '');
    } catch (error) {
      setProblem(error instanceof Error ? error.message : MARK_NOT_READ);
    }
  };
  return (
    <fieldset className="own-look">
      <legend>Your own colour and mark</legend>
      <div className="own-look-row">
        <label htmlFor={id}>Colour</label>
        <input
          id={id}
          type="color"
          value={colour ?? INK}
          onChange={(event) => setProblem(keepLook({ colour: event.currentTarget.value }) ?? '')}
        />
        {colour !== null && (
          <button type="button" className="text-button" onClick={() => setProblem(keepLook({ colour: null }) ?? '')}>
            Remove the colour
          </button>
        )}
      </div>
      <div className="own-look-row">
        {mark !== null && <img src={mark} alt="Your mark" />}
        <label className="plain showing-open">
          {mark === null ? 'Choose a mark' : 'Choose another mark'}
          <input
            type="file"
            accept="image/png,image/jpeg,image/webp"
            onChange={({ currentTarget }) => {
              const [file] = currentTarget.files ?? [];
              // The same file can be chosen again.
              if (file) void take(file).finally(() => (currentTarget.value = ''));
            }}
          />
        </label>
        {mark !== null && (
          <button type="button" className="text-button" onClick={() => setProblem(keepLook({ mark: null }) ?? '')}>
            Remove the mark
          </button>
        )}
      </div>
      {problem !== '' && (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      )}
      <p className="fine">{OWN_LOOK_KEPT}</p>
    </fieldset>
  );
}

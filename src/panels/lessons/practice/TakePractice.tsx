import { useId, useRef, useState, type ChangeEvent } from 'react';
import { book, takePractice } from '../../../record';
import { goTo, useMayWrite } from '../navigation';
import { CodeCamera } from './CodeCamera';
import { readPictureCode } from './qr';
import { CAMERA_LOOKS_FOR, HOW_IT_COMES, NOT_OPENED, NO_CODE, READING_ONLY } from '../../../words/book/practicePanel';
import './practice.css';

/** Larger files are not opened, bytes: no photo of a code is. */
const LARGEST_FILE = 40e6;

/** The code in a text file or in a picture of it, or what is wrong with the file. */
async function codeIn(file: File): Promise<{ readonly code: string } | { readonly problem: string }> {
  if (file.size > LARGEST_FILE) return { problem: NOT_OPENED };
  try {
    if (!file.type.startsWith('image/')) return { code: await file.text() };
    const code = await readPictureCode(file);
    return code === undefined ? { problem: NO_CODE } : { code };
  } catch {
    return { problem: NOT_OPENED };
  }
}

/** Practice that comes back from a player: pasted, from a file or by camera. It finds its lesson by its plan. */
export function TakePractice() {
  const mayWrite = useMayWrite();
  const [pasted, setPasted] = useState('');
  const [problem, setProblem] = useState<string>();
  const [isCamera, setCamera] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  const id = useId();

  const take = (code: string): void => {
    setCamera(false);
    const taken = takePractice(book.state.getState().records, code, book.birth().nowMs);
    if ('problem' in taken) setProblem(taken.problem);
    else if (!book.apply(taken.edit)) setProblem(READING_ONLY);
    else goTo({ page: 'lesson', id: taken.lessonId }, taken.said);
  };
  const open = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const [file] = event.currentTarget.files ?? [];
    event.currentTarget.value = '';
    if (!file) return;
    const found = await codeIn(file);
    if ('problem' in found) setProblem(found.problem);
    else take(found.code);
  };

  if (!mayWrite) return <p>{READING_ONLY}</p>;
  return (
    <>
      <p>{HOW_IT_COMES}</p>
      <form
        className="practice-paste"
        onSubmit={(event) => {
          event.preventDefault();
          take(pasted);
        }}
      >
        <div className="field">
          <label htmlFor={id}>Code from the player</label>
          <textarea
            id={id}
            rows={3}
            spellCheck={false}
            autoComplete="off"
            value={pasted}
            onChange={(event) => setPasted(event.currentTarget.value)}
          />
        </div>
        <div className="lesson-actions">
          <button type="submit" className="plain wide" disabled={pasted.trim() === ''}>
            Take the code
          </button>
          <button type="button" className="plain" onClick={() => input.current?.click()}>
            Open a file …
          </button>
          {!isCamera && 'mediaDevices' in navigator && (
            <button
              type="button"
              className="plain"
              onClick={() => {
                setProblem(undefined);
                setCamera(true);
              }}
            >
              Use the camera
            </button>
          )}
          <input
            ref={input}
            type="file"
            accept=".txt,text/plain,image/*"
            className="unseen"
            tabIndex={-1}
            aria-label="File with the code, or a picture of it"
            onChange={(event) => void open(event)}
          />
        </div>
      </form>
      {isCamera && (
        <CodeCamera
          onFound={take}
          onClose={(why) => {
            setCamera(false);
            setProblem(why);
          }}
        />
      )}
      {problem !== undefined && (
        <p className="lesson-note" role="alert">
          {problem}
        </p>
      )}
      <p className="fine">{CAMERA_LOOKS_FOR}</p>
    </>
  );
}

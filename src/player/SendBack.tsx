import { useId, useMemo, useState } from 'react';
import { codeOf, codePath } from '../export';
import { toPracticeCode } from '../practice/code';
import { PRACTICE_LIMITS, type Practice } from '../practice/practice';
import { SEND_BACK } from '../words/player/page';
import './sendBack.css';

interface Props {
  readonly practice: Practice;
  /** What was typed for the coach. */
  readonly onWords: (words: string) => void;
}

/** What was practised as a code that the coach's lesson book reads. It leaves the device only when the player shows, copies or shares it. */
export function SendBack({ practice, onWords }: Props) {
  const code = useMemo(() => toPracticeCode(practice), [practice]);
  const squares = useMemo(() => codeOf(code), [code]);
  const [said, setSaid] = useState('');
  const id = useId();
  const copy = (): Promise<void> =>
    navigator.clipboard.writeText(code).then(
      () => setSaid(SEND_BACK.copied),
      () => setSaid(SEND_BACK.notCopied),
    );
  const share = (): Promise<void> => navigator.share({ text: code }).catch(() => {});
  return (
    <section className="send-back" aria-labelledby={`${id}head`}>
      <h2 id={`${id}head`}>Back to your coach</h2>
      <p>{SEND_BACK.carries}</p>
      <label className="send-back-words">
        <span>One line to your coach</span>
        <input
          type="text"
          maxLength={PRACTICE_LIMITS.words}
          autoComplete="off"
          value={practice.words}
          onChange={(event) => onWords(event.currentTarget.value)}
        />
      </label>
      <svg
        className="send-back-code"
        viewBox={`0 0 ${squares.length} ${squares.length}`}
        role="img"
        aria-label={SEND_BACK.code}
      >
        <rect width="100%" height="100%" fill="#fff" />
        <path d={codePath(squares)} fill="#000" />
      </svg>
      <div className="send-back-acts">
        <button type="button" className="plain" onClick={() => void copy()}>
          Copy the code
        </button>
        {typeof navigator.share === 'function' && (
          <button type="button" className="plain" onClick={() => void share()}>
            Share the code
          </button>
        )}
        <button type="button" className="plain" onClick={() => save(code)}>
          Save the code as a file
        </button>
      </div>
      <output className="fine">{said}</output>
    </section>
  );
}

function save(code: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([`${code}\n`], { type: 'text/plain' }));
  link.download = 'slantwise-practice.txt';
  link.click();
  // Some browsers read the blob after the click has returned.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

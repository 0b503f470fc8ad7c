import { useId, useMemo, useRef, useState } from 'react';
import { codeOf, codePath, toAddress, toCodeAddress } from '../../export';
import { useDesk } from '../../store';
import { SCAN_PART, SCAN_WHY } from '../../words';
import { LINK_CHOSEN } from '../../words/showing/forms';

/** The whole document as a link and as a code. Nothing is sent anywhere: the link is the document. */
export function LinkForm() {
  const document = useDesk((state) => state.document);
  const address = useMemo(() => toAddress(document, location.href), [document]);
  const code = useMemo(() => toCodeAddress(document, location.href), [document]);
  const squares = useMemo(() => codeOf(code.address), [code]);
  const [said, setSaid] = useState('');
  const field = useRef<HTMLInputElement>(null);
  const id = useId();
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(address);
      setSaid('Copied.');
    } catch {
      field.current?.select();
      setSaid(LINK_CHOSEN);
    }
  };
  return (
    <section aria-labelledby="showing-link">
      <h3 id="showing-link">Link</h3>
      <div className="link">
        <svg
          className="link-code"
          viewBox={`0 0 ${squares.length} ${squares.length}`}
          role="img"
          aria-label="Code that opens this swing"
        >
          <rect width="100%" height="100%" fill="#fff" />
          <path d={codePath(squares)} fill="#000" />
        </svg>
        <div>
          <div className="field">
            <label htmlFor={id}>Link</label>
            <input
              ref={field}
              id={id}
              type="text"
              readOnly
              value={address}
              onFocus={(event) => event.currentTarget.select()}
            />
          </div>
          <p className="showing-acts">
            <button type="button" className="plain" onClick={() => void copy()}>
              Copy the link
            </button>
            {typeof navigator.share === 'function' && (
              <button
                type="button"
                className="plain"
                onClick={() => void navigator.share({ url: address }).catch(() => {})}
              >
                Share the link
              </button>
            )}
          </p>
          <output className="fine">{said || (code.isWhole ? SCAN_WHY : SCAN_PART)}</output>
        </div>
      </div>
    </section>
  );
}

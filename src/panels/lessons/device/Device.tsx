import { useEffect, useState } from 'react';
import { runSelfChecks, type SelfCheck } from './selfChecks';
import { NOTHING_LEAVES, NO_ACCOUNT } from '../../../words/book/device';

/** What leaves this device: nothing, shown on the spot. */
export function Device() {
  const [proofs, setProofs] = useState<readonly SelfCheck[]>();
  const [run, setRun] = useState(0);
  useEffect(() => {
    let current = true;
    void runSelfChecks().then((found) => current && setProofs(found));
    return () => {
      current = false;
    };
  }, [run]);
  return (
    <>
      <p className="lesson-state">{NOTHING_LEAVES}</p>
      <p>{NO_ACCOUNT}</p>
      <ul className="proofs" aria-live="polite">
        {proofs?.map(({ title, holds, word, details }) => (
          <li key={title}>
            <h3>{title}</h3>
            <p className="proof-word" data-holds={holds}>
              {word}
            </p>
            <ul className="fine">
              {details.map((detail) => (
                <li key={detail}>{detail}</li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      <button
        type="button"
        className="plain wide"
        onClick={() => {
          setProofs(undefined);
          setRun(run + 1);
        }}
      >
        Check again
      </button>
    </>
  );
}

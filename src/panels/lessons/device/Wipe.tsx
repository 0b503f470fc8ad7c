import { useState } from 'react';
import { book, deskLink, type PlayerRecord } from '../../../record';
import { goTo } from '../navigation';

/** Removes a player for good, in two taps, and reports what the store says afterwards. */
export function Wipe({ player }: { player: PlayerRecord }) {
  const [asked, setAsked] = useState(false);
  const [answer, setAnswer] = useState<string>();
  const wipe = async (): Promise<void> => {
    if (deskLink.openLesson()?.playerId === player.id) deskLink.close();
    const { removed, left } = await book.wipe(player.id);
    if (left === 0) {
      goTo(
        { page: 'players' },
        `${player.name}: ${removed} ${removed === 1 ? 'record' : 'records'} wiped. Read back: nothing is left here.`,
      );
    } else setAnswer(`${left} records could not be wiped. Try again.`);
  };
  return (
    <div className="lesson-wipe">
      {asked ? (
        <>
          <p>This deletes {player.name}, every lesson, swing and still. There is no undo.</p>
          <div className="lesson-actions">
            <button type="button" className="plain" onClick={() => void wipe()}>
              Delete permanently
            </button>
            <button type="button" className="plain" onClick={() => setAsked(false)}>
              Keep
            </button>
          </div>
        </>
      ) : (
        <button type="button" className="text-button" onClick={() => setAsked(true)}>
          Delete permanently …
        </button>
      )}
      {answer !== undefined && <p role="alert">{answer}</p>}
    </div>
  );
}

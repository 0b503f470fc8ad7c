import { ILLUSTRATION, sayStatus } from '../../words';
import { SaveStatus } from '../lessons/device/SaveStatus';
import { useDesk } from '../../store';
import { sayWho } from '../../words/showing/who';
import { useWrittenText } from '../fields/useWrittenText';

/** One sentence about the swing, who swings what, and what the picture is. */
export function Status() {
  const sentence = useWrittenText<HTMLParagraphElement>(sayStatus);
  const who = useDesk(({ document }) => sayWho(document));
  return (
    <footer className="status">
      <p className="status-sentence" ref={sentence} />
      <p className="status-who">{who}</p>
      <SaveStatus />
      <p className="status-illustration">{ILLUSTRATION}</p>
    </footer>
  );
}

import { useRef, type CSSProperties } from 'react';
import { dialValue, edgeDial, useWritten, type DialId } from '../../store';

/** Where a share of the track lies: the thumb's middle runs from 18 px to 18 px before the end. */
export const along = (share: number): string => `calc(18px + (100% - 36px) * ${share.toFixed(5)})`;
const over = (share: number): string => `calc((100% - 36px) * ${share.toFixed(5)})`;

interface Props {
  readonly id: DialId;
  readonly ticks: number;
  readonly low: string;
  readonly high: string;
}

/** The rule behind a slider: ticks, usual range open, hatched beyond, wedge at the reference, bar from it to the thumb. */
export function DialRule({ id, ticks, low, high }: Props) {
  const dial = edgeDial(id);
  const share = (edge: number): number => (edge - dial.min) / (dial.max - dial.min);
  const [from, to] = [share(dial.usualMin), share(dial.usualMax)];
  const reference = share(dial.neutral);
  const change = useRef<HTMLElement>(null);
  useWritten(
    ({ document }) => share(dialValue(document.movements, id)),
    (now) => {
      const { style } = change.current!;
      style.left = along(Math.min(reference, now));
      style.width = over(Math.abs(now - reference));
    },
  );
  return (
    <div className="rule-marks" aria-hidden="true">
      <i className="rule-ticks" style={{ '--n': ticks } as CSSProperties} />
      <i className="rule-line" />
      <i className="rule-beyond" style={{ left: along(0), width: over(from) }} />
      <i className="rule-usual" style={{ left: along(from), width: over(to - from) }} />
      <i className="rule-beyond" style={{ left: along(to), width: over(1 - to) }} />
      <i className="rule-change" ref={change} />
      <i className="rule-reference" style={{ left: along(reference) }} />
      <span className="rule-end" data-end="low">
        {low}
      </span>
      <span className="rule-end" data-end="high">
        {high}
      </span>
    </div>
  );
}

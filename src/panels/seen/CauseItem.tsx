import type { ReactNode } from 'react';
import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { Bands } from '../../reading/verdicts';
import { DIALS } from '../../model/movements';
import type { Cause } from '../../solving/diagnosis/causes';
import type { Explanation } from '../../solving/diagnosis/match';
import { useDesk } from '../../store';
import { sayWhatTells } from '../../words/why/family';
import { sayExplanation, sayFit } from '../../words/why/sightings';
import { sayJudged } from '../../words/why/whatToChange';

interface Props {
  readonly cause: Cause;
  readonly bands: Bands;
  /** The ways to look at it, where there are any. */
  readonly children?: ReactNode;
}

/** One cause of what was seen: what moves, how well it fits, and what tells it from the next. */
export function CauseItem({ cause, bands, children }: Props) {
  const units = useDesk(({ document }) => document.units);
  const { title, text, spoken } = sayExplanation(cause, units);
  const [arm, shaft] = CHECKPOINT_IDS.map((id) => sayJudged(id, cause.readings[id], bands, units).text);
  return (
    <li className="explanation" data-status={cause.status} data-usual={cause.isUsual}>
      <p className="explanation-name">
        <b>{title}</b> <span aria-hidden="true">{text}</span>
        <span className="unseen">{spoken}</span>
        {cause.plusMinus !== undefined && <small> {sayGive(cause)}</small>}
      </p>
      <p className="fine">
        {sayFit(cause)}; would read {arm}, {shaft}
      </p>
      {cause.tell && (
        <p className="cause-tell">
          <b>To tell it from the next:</b> {sayWhatTells(cause.tell, units).text}.
        </p>
      )}
      {children}
    </li>
  );
}

/** "± 4°" of the one dial that moves. */
function sayGive({ dials, plusMinus }: Explanation): string {
  const dial = DIALS.find(({ id }) => id === dials[0])!;
  const edge = plusMinus! / dial.edgeUnit;
  const unit = {
    leadWristFlexion: '°',
    rotationRate: ' %',
    rotationDelay: ' ms',
    trailSideBend: '°',
    pelvisShift: ' cm',
  }[dial.id];
  return `± ${Math.max(1, Math.round(dial.id === 'rotationRate' ? edge * 100 : edge))}${unit}`;
}

import { useEffect, useState } from 'react';
import { CLUB_IDS } from '../../../model/club';
import { DIALS, type MovementId } from '../../../model/movements';
import { saveFile } from '../../../record/file/saveFile';
import type { Gain } from '../../../solving/rule/gains';
import { useDesk } from '../../../store';
import { toArmAngle, toFaceReturned } from '../../../store/document/convert';
import { GAIN_UNITS } from '../../../store/rules/ruleActions';
import { ruleClient, useGains } from '../../../store/rules/ruleClient';
import { DIAL_NAMES, type Units } from '../../../words';
import {
  GAIN_MEASURES,
  GAIN_WORDS,
  gainsCsv,
  gainUnit,
  sayGains,
  showGain,
  type GainMeasure,
  formatHeight,
} from '../../../words/why/gains';
import { Lead, Source } from '../Lead';
import { Pick } from '../Pick';
import './rule.css';

/** Who gains most: what one movement does to every height and club. */
export default function Gains() {
  const [movement, setMovement] = useState<MovementId>('leadWristFlexion');
  const own = useDesk(({ document }) => document.player.statureM);
  const club = useDesk(({ document }) => document.club.id);
  const units = useDesk(({ document }) => document.units);
  const armAngle = useDesk(({ document }) => toArmAngle(document));
  const rule = useDesk(({ document }) => document.ball.rule);
  const faceReturned = useDesk(({ document }) => toFaceReturned(document.ball));
  const gains = useGains((state) => state.gains);
  const isBusy = useGains((state) => state.isBusy);
  useEffect(
    () => ruleClient.gains(movement, GAIN_UNITS[movement], own, { armAngle, rule, faceReturned }),
    [movement, own, armAngle, rule, faceReturned],
  );
  return (
    <div className="gains">
      <Lead text={isBusy ? `${GAIN_WORDS[movement]} …` : sayGains(movement, gains)} />
      <Pick
        label="Movement"
        options={DIALS.map(({ id }) => ({ value: id, text: DIAL_NAMES[id].label }))}
        value={movement}
        onPick={setMovement}
      />
      {GAIN_MEASURES.map((measure) => (
        <Table key={measure.id} measure={measure} gains={gains} own={{ stature: own, club }} units={units} />
      ))}
      <div className="plan-acts no-print">
        <button
          type="button"
          className="plain"
          aria-disabled={isBusy}
          onClick={() => saveFile('who-gains.csv', gainsCsv(movement, gains), 'text/csv')}
        >
          Save as CSV
        </button>
        <button type="button" className="plain" onClick={print}>
          Print
        </button>
      </div>
      <Source>
        {GAIN_WORDS[movement]}: half to either side of each one’s reference. Computed by the model, usual proportions.
      </Source>
    </div>
  );
}

/** Prints this table alone. */
function print(): void {
  const root = document.documentElement;
  root.dataset['print'] = 'gains';
  window.addEventListener('afterprint', () => delete root.dataset['print'], { once: true });
  window.print();
}

interface TableProps {
  readonly measure: GainMeasure;
  readonly gains: readonly Gain[];
  /** The player on the desk: marked. */
  readonly own: { readonly stature: number; readonly club: string };
  readonly units: Units;
}

const SHORT: Readonly<Record<string, string>> = {
  driver: 'Dr',
  '5-wood': '5w',
  '5-iron': '5i',
  '7-iron': '7i',
  '9-iron': '9i',
  'pitching wedge': 'PW',
  'sand wedge': 'SW',
};

/** One small multiple: heights down, clubs across, a bar under each number. */
function Table({ measure, gains, own, units }: TableProps) {
  const statures = [...new Set(gains.map(({ stature }) => stature))];
  const sizes = gains.map((gain) => Math.abs(gain[measure.id])).filter(Number.isFinite);
  const most = Math.max(...sizes, 1e-9);
  return (
    <table className="gains-table">
      <caption>
        {measure.title}, {gainUnit(measure, units)}
      </caption>
      <thead>
        <tr>
          <th scope="col">m</th>
          {CLUB_IDS.map((id) => (
            <th key={id} scope="col" title={id} aria-label={id}>
              {SHORT[id]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {statures.map((stature) => (
          <tr key={stature}>
            <th scope="row">{formatHeight(stature)}</th>
            {CLUB_IDS.map((id) => {
              const gain = gains.find((one) => one.stature === stature && one.club === id);
              const isOwn = stature === own.stature && id === own.club;
              return (
                <td key={id} data-own={isOwn || undefined}>
                  {gain ? showGain(measure, gain, units) : ''}
                  {gain && <i style={{ width: `${(100 * Math.abs(gain[measure.id])) / most}%` }} aria-hidden="true" />}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

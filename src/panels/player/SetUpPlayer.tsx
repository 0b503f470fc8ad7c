import {
  bodyOf,
  SEGMENT_FACTOR_LIMITS,
  SEGMENT_FRACTIONS,
  SetupError,
  STATURE_LIMITS_M,
  type MeasuredSegments,
  type Player,
  type SegmentId,
} from '../../model/body';
import { setPlayer, useDesk } from '../../store';
import { Choice } from '../fields/Choice';
import { lengthField } from './lengthFields';
import { outside } from '../../words/numbers/ranges';
import { NumberField } from '../fields/NumberField';
import { LENGTHS_SOURCE } from '../../words/setUp/setUp';

const SEGMENT_NAMES: Readonly<Record<SegmentId, string>> = {
  trunk: 'Trunk, hip to shoulder',
  shoulderHalf: 'Shoulders, half the width',
  hipHalf: 'Hips, half the width',
  upperArm: 'Upper arm',
  forearm: 'Forearm',
  grip: 'Wrist to grip',
  thigh: 'Thigh',
  shank: 'Lower leg',
  ankle: 'Ankle height',
  foot: 'Foot',
};
const SEGMENT_IDS = Object.keys(SEGMENT_FRACTIONS) as SegmentId[];

/** Takes a player the model accepts; otherwise says why not. */
function takePlayer(player: Player): string | undefined {
  try {
    bodyOf(player);
  } catch (error) {
    if (!(error instanceof SetupError)) throw error;
    // What is typed is within its limits, so this is a length that was measured before.
    const [name] = (SEGMENT_NAMES[error.field as SegmentId] ?? error.field).split(',');
    return `${name} as measured does not fit this height. Change it first, or empty it.`;
  }
  setPlayer(player);
  return undefined;
}

function withSegment({ segmentsM, ...player }: Player, id: SegmentId, lengthM: number | undefined): Player {
  const others = Object.entries(segmentsM ?? {}).filter(([name]) => name !== id);
  const measured = Object.fromEntries(lengthM === undefined ? others : [...others, [id, lengthM]]) as MeasuredSegments;
  return Object.keys(measured).length === 0 ? player : { ...player, segmentsM: measured };
}

/** Stature, hand, and measured lengths where a player differs from the table. */
export function SetUpPlayer() {
  const player = useDesk(({ document }) => document.player);
  const units = useDesk(({ document }) => document.units);
  const { unit, decimals, toField, fromField } = lengthField(units);
  const outsideLengths = (label: string, typed: number, { min, max }: { min: number; max: number }) =>
    outside(label, typed, toField(min), toField(max), unit, decimals);
  const usual = bodyOf({ statureM: player.statureM, handed: player.handed });
  const measuredCount = Object.keys(player.segmentsM ?? {}).length;
  return (
    <section aria-labelledby="set-up-player">
      <h3 id="set-up-player" className="unseen">
        Player
      </h3>
      <div className="fields">
        <NumberField
          label="Height"
          isHeight
          unit={unit}
          decimals={decimals}
          value={toField(player.statureM)}
          onTake={(typed) =>
            outsideLengths('Height', typed!, STATURE_LIMITS_M) ?? takePlayer({ ...player, statureM: fromField(typed!) })
          }
        />
        <Choice
          label="Plays"
          value={player.handed}
          options={[
            { value: 'right', text: 'Right-handed' },
            { value: 'left', text: 'Left-handed' },
          ]}
          onChoose={(handed) => setPlayer({ ...player, handed })}
        />
      </div>
      <details>
        <summary>Measured lengths{measuredCount > 0 && ` (${measuredCount})`}</summary>
        <p className="fine">{LENGTHS_SOURCE}</p>
        <div className="fields">
          {SEGMENT_IDS.map((id) => {
            const measured = player.segmentsM?.[id];
            return (
              <NumberField
                key={id}
                optional
                label={SEGMENT_NAMES[id]}
                unit={unit}
                decimals={decimals}
                value={measured === undefined ? undefined : toField(measured)}
                placeholder={toField(usual[id]).toFixed(1)}
                onTake={(typed) => {
                  if (typed === undefined) return takePlayer(withSegment(player, id, undefined));
                  const { min, max } = SEGMENT_FACTOR_LIMITS;
                  const fits = { min: min * usual[id], max: max * usual[id] };
                  return (
                    outsideLengths(SEGMENT_NAMES[id], typed, fits) ??
                    takePlayer(withSegment(player, id, fromField(typed)))
                  );
                }}
              />
            );
          })}
        </div>
      </details>
    </section>
  );
}

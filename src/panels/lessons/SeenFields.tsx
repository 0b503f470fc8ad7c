import { book, editLesson, LIMITS, type LessonRecord, type Sighting } from '../../record';
import { useDesk, type CheckpointId } from '../../store';
import { LENGTHS } from '../../words';
import { Choice } from '../Choice';
import { NumberField } from '../NumberField';

const PLACES: readonly {
  readonly id: CheckpointId;
  readonly title: string;
  readonly over: string;
  readonly under: string;
}[] = [
  { id: 'leadArmParallel', title: 'P5, shaft line from the trail bicep', over: 'Above', under: 'Below' },
  { id: 'shaftParallel', title: 'P6, head from the hands', over: 'In front', under: 'Behind' },
];
/** What an eye is good for when nothing else is said (our choice), cm. */
const USUAL_GIVE_CM = 3;

function Fields({ lesson, at }: { lesson: LessonRecord; at: (typeof PLACES)[number] }) {
  const { length } = useDesk(({ document }) => document.units);
  const { metres, symbol, decimals } = LENGTHS[length];
  const cmPerUnit = metres * 100;
  const sighting = lesson.seen[at.id];
  const set = (next: Sighting | null): undefined => {
    const seen = { ...lesson.seen, [at.id]: next };
    book.apply(editLesson(lesson, book.birth().nowMs, { seen }, `Seen at ${at.title.slice(0, 2)}`));
    return undefined;
  };
  const toCm = (typed: number): number => Number((typed * cmPerUnit).toFixed(2));
  const tooFar = `Enter at most ${Math.floor(LIMITS.cm / cmPerUnit)} ${symbol}.`;
  return (
    <fieldset className="seen">
      <legend>{at.title}</legend>
      <NumberField
        label="Seen"
        unit={symbol}
        decimals={decimals + 1}
        optional
        value={sighting === null ? undefined : Math.abs(sighting.cm) / cmPerUnit}
        onTake={(typed) => {
          if (typed === undefined) return set(null);
          const cm = toCm(typed) * (sighting !== null && sighting.cm < 0 && typed > 0 ? -1 : 1);
          if (Math.abs(cm) > LIMITS.cm) return tooFar;
          return set({ cm: cm + 0, plusMinusCm: sighting?.plusMinusCm ?? USUAL_GIVE_CM });
        }}
      />
      <NumberField
        label="Give or take (±)"
        unit={symbol}
        decimals={decimals + 1}
        optional
        value={sighting === null ? undefined : sighting.plusMinusCm / cmPerUnit}
        onTake={(typed) => {
          if (!sighting) return typed === undefined ? undefined : 'First enter what you saw.';
          const plusMinusCm = toCm(typed ?? USUAL_GIVE_CM / cmPerUnit);
          if (plusMinusCm < 0 || plusMinusCm > LIMITS.cm) return tooFar;
          return set({ ...sighting, plusMinusCm });
        }}
      />
      {sighting !== null && (
        <Choice
          label="Side"
          value={sighting.cm < 0 ? 'under' : 'over'}
          options={[
            { value: 'over', text: at.over },
            { value: 'under', text: at.under },
          ]}
          onChoose={(side) => set({ ...sighting, cm: Math.abs(sighting.cm) * (side === 'under' ? -1 : 1) + 0 })}
        />
      )}
    </fieldset>
  );
}

/** What the coach saw at both checkpoints, with his own give or take. Measured by him, never by the model. */
export const SeenFields = ({ lesson }: { lesson: LessonRecord }) => (
  <div className="seen-fields">
    {PLACES.map((at) => (
      <Fields key={at.id} lesson={lesson} at={at} />
    ))}
  </div>
);

import { book, editLesson, type LessonRecord } from '../../record';
import { change, useDesk, type CheckpointId } from '../../store';
import { SEEN_LIMITS, USUAL_GIVE_CM, type Seen, type Sighting } from '../../store/document/sighting';
import { LENGTHS } from '../../words';
import { Choice } from '../fields/Choice';
import { NumberField } from '../fields/NumberField';
import { useBook } from './navigation';

const PLACES: readonly {
  readonly id: CheckpointId;
  readonly title: string;
  readonly over: string;
  readonly under: string;
}[] = [
  { id: 'leadArmParallel', title: 'Lead arm parallel: shaft from the trail bicep', over: 'Above', under: 'Below' },
  { id: 'shaftParallel', title: 'Shaft parallel: head from the hands', over: 'In front', under: 'Behind' },
];
/** An open lesson is edited on the desk, where the plates show it; a closed one in the book. */
function note(lesson: LessonRecord, seen: Seen, label: string): void {
  if (book.state.getState().meta.openLessonId === lesson.id) change(label, (document) => ({ ...document, seen }));
  else book.apply(editLesson(lesson, book.birth().nowMs, { now: { ...lesson.now, seen } }, label));
}

/** Why a length cannot be taken, or undefined. */
function whyNot(cm: number, part: keyof Sighting, cmPerUnit: number, symbol: string): string | undefined {
  const { min, max } = SEEN_LIMITS[part];
  if (cm >= min && cm <= max) return undefined;
  const show = (edge: number): string => String(Number((edge / cmPerUnit).toFixed(1)));
  return `Enter ${show(Math.max(0, min))} to ${show(max)} ${symbol}.`;
}

function Fields({ lesson, at }: { lesson: LessonRecord; at: (typeof PLACES)[number] }) {
  const { length } = useDesk(({ document }) => document.units);
  const { metres, symbol, decimals } = LENGTHS[length];
  const cmPerUnit = metres * 100;
  const isOpen = useBook(({ meta }) => meta.openLessonId === lesson.id);
  const onDesk = useDesk(({ document }) => document.seen);
  const seen = isOpen ? onDesk : lesson.now.seen;
  const sighting = seen[at.id];
  const set = (next: Sighting | null): undefined => {
    note(lesson, { ...seen, [at.id]: next }, `Seen at ${at.title.slice(0, 2)}`);
    return undefined;
  };
  const toCm = (typed: number): number => Number((typed * cmPerUnit).toFixed(2));
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
          return (
            whyNot(cm, 'cm', cmPerUnit, symbol) ??
            set({ cm: cm + 0, plusMinusCm: sighting?.plusMinusCm ?? USUAL_GIVE_CM })
          );
        }}
      />
      <NumberField
        label="Margin (±)"
        unit={symbol}
        decimals={decimals + 1}
        optional
        value={sighting === null ? undefined : sighting.plusMinusCm / cmPerUnit}
        onTake={(typed) => {
          if (!sighting) return typed === undefined ? undefined : 'First enter what you saw.';
          const plusMinusCm = toCm(typed ?? USUAL_GIVE_CM / cmPerUnit);
          return whyNot(plusMinusCm, 'plusMinusCm', cmPerUnit, symbol) ?? set({ ...sighting, plusMinusCm });
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

import type { WrittenClaim, WrittenCondition, WrittenRule } from '../../../edge/rule';
import { CHECKPOINT_IDS, CHECKPOINTS } from '../../../reading/checkpointTable';
import {
  BALL_SUBJECTS,
  MOVEMENT_SUBJECTS,
  READING_SUBJECTS,
  sayChange,
  sayPart,
  subjectOf,
} from '../../../words/why/rule';
import { NumberField } from '../../fields/NumberField';
import { Select } from '../../fields/Select';
import { Pick } from '../Pick';
import { editRule } from '../../../store/rules/keptRules';

type Part = WrittenCondition & WrittenClaim;
const VERDICTS = ['steep', 'onPlane', 'shallow'] as const;

/** What a part may speak of, as one word each: "movement rotationRate", "leadArmParallel is", "ball pathDeg". */
const groupsOf = (withMovements: boolean) => [
  ...(withMovements ? [{ label: 'Movement', options: optionsOf('movement', MOVEMENT_SUBJECTS) }] : []),
  ...CHECKPOINT_IDS.map((at) => ({
    label: CHECKPOINTS[at].title,
    options: [{ value: `${at} is`, text: 'verdict' }, ...optionsOf(at, READING_SUBJECTS)],
  })),
  ...(withMovements ? [] : [{ label: 'At the ball (takes longer)', options: optionsOf('ball', BALL_SUBJECTS) }]),
];
const optionsOf = (at: string, subjects: Readonly<Record<string, { readonly name: string }>>) =>
  Object.entries(subjects).map(([field, { name }]) => ({ value: `${at} ${field}`, text: name }));

const keyOf = ({ movement, at, is, reading }: Partial<Part>): string =>
  movement === undefined ? `${at} ${is === undefined ? reading : 'is'}` : `movement ${movement}`;

/** A part that speaks of something else, with a value to begin with. */
function partFor(key: string): Partial<Part> {
  const [at, what] = key.split(' ') as [CheckpointAt | 'movement', string];
  if (at === 'movement') return { movement: what, moreThan: what === 'rotationRate' ? 1 : 0 };
  if (what === 'is' && at !== 'ball') return { at, is: CHECKPOINTS[at].verdicts.steep };
  return { at, reading: what, moreThan: 0 };
}
type CheckpointAt = NonNullable<Part['at']>;

const WAYS = {
  moreThan: 'is over',
  lessThan: 'is under',
  movesBy: 'moves at least',
  staysWithin: 'stays within',
} as const;
type Way = keyof typeof WAYS;
const wayOf = (part: Partial<Part>): Way => (Object.keys(WAYS) as Way[]).find((way) => part[way] !== undefined)!;

interface RowProps {
  readonly part: Partial<Part>;
  readonly ways: readonly Way[];
  readonly groups: ReturnType<typeof groupsOf>;
  readonly onEdit: (part: Partial<Part>) => void;
  readonly onDrop: () => void;
}

/** One condition or claim, chosen word by word. */
function Row({ part, ways, groups, onEdit, onDrop }: RowProps) {
  const { at, is, reading, movement } = part;
  const of = movement === undefined ? { ...(at && { at }), ...(reading && { reading }) } : { movement };
  const way = wayOf(part);
  const verdicts = at === undefined || at === 'ball' ? [] : VERDICTS.map((id) => CHECKPOINTS[at].verdicts[id]);
  return (
    <li className="rule-row">
      <Pick label="What" groups={groups} value={keyOf(part)} onPick={(key) => onEdit(partFor(key))} />
      {is !== undefined ? (
        <Select
          label="is"
          value={is}
          options={verdicts.map((word) => [word, word] as const)}
          onChoose={(word) => onEdit({ at: at!, is: word })}
        />
      ) : (
        <>
          <Select
            label="How"
            value={way}
            options={ways.map((one) => [one, WAYS[one]] as const)}
            onChoose={(next) => onEdit({ ...of, [next]: part[way] ?? 0 })}
          />
          <Value part={part} way={way} onTake={(value) => onEdit({ ...of, [way]: value })} />
        </>
      )}
      <button type="button" className="plain" onClick={onDrop}>
        Remove<span className="unseen">: {sayPart(part)}</span>
      </button>
    </li>
  );
}

function Value({ part, way, onTake }: { part: Partial<Part>; way: Way; onTake: (value: number) => void }) {
  const { unit, scale } = subjectOf(part);
  return (
    <NumberField
      label="Number"
      unit={unit}
      decimals={2}
      value={part[way]! * scale}
      onTake={(typed) => {
        onTake(typed! / scale);
        return undefined;
      }}
    />
  );
}

const replaced = <T,>(list: readonly T[], at: number, next: T): T[] => list.map((one, i) => (i === at ? next : one));

/** The list of a rule's conditions, or of its claims. */
export function PartList({ rule, name }: { rule: WrittenRule; name: 'when' | 'expect' }) {
  const parts = (rule[name] ?? []) as readonly Partial<Part>[];
  const take = (next: readonly Partial<Part>[]): void => editRule({ [name]: next });
  const isClaim = name === 'expect';
  const ways: readonly Way[] =
    isClaim && rule.do?.length ? ['movesBy', 'staysWithin', 'moreThan', 'lessThan'] : ['moreThan', 'lessThan'];
  const groups = groupsOf(!isClaim);
  return (
    <ul className="rule-rows">
      {parts.map((part, i) => (
        <Row
          key={i}
          part={part}
          ways={
            part.movesBy !== undefined || part.staysWithin !== undefined
              ? ['movesBy', 'staysWithin', 'moreThan', 'lessThan']
              : ways
          }
          groups={groups}
          onEdit={(next) => take(replaced(parts, i, next))}
          onDrop={() => take(parts.filter((_, k) => k !== i))}
        />
      ))}
      <li>
        <button
          type="button"
          className="plain"
          onClick={() => take([...parts, partFor(isClaim ? 'leadArmParallel is' : 'movement leadWristFlexionDeg')])}
        >
          Add {isClaim ? 'what is expected' : 'a condition'}
        </button>
      </li>
    </ul>
  );
}

/** What the player changes. */
export function ChangeList({ rule }: { rule: WrittenRule }) {
  const changes = rule.do ?? [];
  const take = (next: typeof changes): void => editRule({ do: next });
  const free = Object.keys(MOVEMENT_SUBJECTS).filter((field) => changes.every(({ movement }) => movement !== field));
  return (
    <ul className="rule-rows">
      {changes.map(({ movement, by }, i) => (
        <li className="rule-row" key={movement}>
          <Select
            label="Change"
            value={movement}
            options={[movement, ...free].map((field) => [field, MOVEMENT_SUBJECTS[field].name] as const)}
            onChoose={(next) => take(replaced(changes, i, { movement: next, by: next === 'rotationRate' ? 0.1 : 5 }))}
          />
          <NumberField
            label="by"
            unit={MOVEMENT_SUBJECTS[movement].unit}
            decimals={2}
            value={by * MOVEMENT_SUBJECTS[movement].scale}
            onTake={(typed) => {
              take(replaced(changes, i, { movement, by: typed! / MOVEMENT_SUBJECTS[movement].scale }));
              return undefined;
            }}
          />
          <button type="button" className="plain" onClick={() => take(changes.filter((_, k) => k !== i))}>
            Remove<span className="unseen">: {sayChange({ movement, by })}</span>
          </button>
        </li>
      ))}
      {free.length > 0 && (
        <li>
          <button
            type="button"
            className="plain"
            onClick={() => take([...changes, { movement: free[0], by: free[0] === 'rotationRate' ? 0.1 : 5 }])}
          >
            Add a change
          </button>
        </li>
      )}
    </ul>
  );
}

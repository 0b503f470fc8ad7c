import { useId } from 'react';
import {
  COMPARISON_IDS,
  COMPARISON_LABELS,
  isThere,
  KIND_WORDS,
  KINDS,
  FRAME_RATES,
  type Arrangement,
  type CameraId,
  type ClipWish,
  type Kind,
  type Shape,
  type Size,
} from '../../../export';
import { useDesk } from '../../../store';
import { makeClip } from '../task/makers';
import { OwnLookForm } from '../own/OwnLookForm';
import { Preview } from './Preview';
import { Select } from '../../fields/Select';
import { useShowing } from '../task/useShowing';
import { setAgainst, wishFor } from '../task/showingStore';
import { NO_SHOT_LEFT } from '../../../words/showing/forms';

const ARRANGEMENTS: readonly (readonly [Arrangement, string])[] = [
  ['ghosted', 'Second body'],
  ['oneAfterOther', 'Back to back'],
  ['sideBySide', 'Side by side'],
  ['one', 'This swing alone'],
];
const CAMERAS: readonly (readonly [CameraId | 'none', string])[] = [
  ['free', 'Free'],
  ['downTheLine', 'Down the line'],
  ['faceOn', 'Face on'],
  ['overhead', 'Overhead'],
  ['orbit', 'Orbit'],
  ['none', 'None'],
];
const SHAPES: readonly (readonly [Shape, string])[] = [
  ['16:9', '16:9 wide'],
  ['9:16', '9:16 upright'],
  ['1:1', '1:1 square'],
];
const SIZES: readonly (readonly [Size, string])[] = [
  ['draft', 'Draft, 180p'],
  ['720p', '720p'],
  ['1080p', '1080p'],
];

/** The storyboard of a clip: what is set side by side, from where it is seen, and in what form it comes out. */
export function ClipForm() {
  const wish = useShowing((state) => state.wish);
  const isBusy = useShowing(({ progress }) => progress !== null);
  const planName = useDesk(({ document }) => document.plan?.names.player ?? null);
  const isEmpty = !wish.wholeSwing && !wish.slowMotion;
  return (
    <section aria-labelledby="showing-clip">
      <h3 id="showing-clip">Clip</h3>
      <div className="fields">
        <Select
          label="Swings"
          value={wish.arrangement}
          options={ARRANGEMENTS}
          onChoose={(arrangement) => wishFor({ arrangement })}
        />
        <Against />
        <Camera label="Whole swing" of="wholeSwing" wish={wish} />
        <Camera label="Slow downswing" of="slowMotion" wish={wish} />
        <Select label="Shape" value={wish.shape} options={SHAPES} onChoose={(shape) => wishFor({ shape })} />
        <Select label="Size" value={wish.size} options={SIZES} onChoose={(size) => wishFor({ size })} />
        <Select
          label="Frames a second"
          value={String(wish.fps)}
          options={FRAME_RATES.map((rate) => [String(rate), String(rate)] as const)}
          onChoose={(rate) => wishFor({ fps: Number(rate) as ClipWish['fps'] })}
        />
        <Select
          label="Format"
          value={wish.kind ?? 'best'}
          options={[['best', 'Best here'], ...KINDS.map((kind) => [kind, KIND_WORDS[kind].label] as const)]}
          onChoose={(kind: Kind | 'best') => wishFor({ kind: kind === 'best' ? null : kind })}
        />
        <Words label="Title" value={wish.title} placeholder="the task" onType={(title) => wishFor({ title })} />
        <Words
          label="Player’s name, if it may be shown"
          value={wish.name}
          placeholder={planName ?? 'left out'}
          onType={(name) => wishFor({ name })}
        />
        <div className="showing-ticks">
          <Tick label="Title card" value={wish.titleCard} onChange={(titleCard) => wishFor({ titleCard })} />
          <Tick label="End card with code" value={wish.endCard} onChange={(endCard) => wishFor({ endCard })} />
          <Tick label="Cuts only: nothing fades or glides" value={wish.cuts} onChange={(cuts) => wishFor({ cuts })} />
        </div>
      </div>
      <OwnLookForm />
      <Preview disabled={isBusy || isEmpty} />
      <p className="showing-acts">
        <button
          type="button"
          className="plain"
          aria-disabled={isBusy || isEmpty}
          onClick={() => isBusy || isEmpty || void makeClip()}
        >
          Make the clip
        </button>
      </p>
      {isEmpty && <p className="field-problem">{NO_SHOT_LEFT}</p>}
    </section>
  );
}

/** What the swing is set against, in clips, on the sheet and in the table. */
function Against() {
  const after = useShowing((state) => state.after);
  const hasPlan = useDesk(({ document }) => document.plan !== null);
  const hasGhost = useDesk(({ session }) => session.ghost !== null && session.ghost !== 'plan');
  const ids = COMPARISON_IDS.filter((id) => isThere(id, hasGhost, hasPlan));
  return (
    <Select
      label="Compare with"
      value={ids.includes(after) ? after : ids[0]}
      options={ids.map((id) => [id, COMPARISON_LABELS[id]] as const)}
      onChoose={setAgainst}
    />
  );
}

function Camera({ label, of, wish }: { label: string; of: 'wholeSwing' | 'slowMotion'; wish: ClipWish }) {
  return (
    <Select
      label={label}
      value={wish[of] ?? 'none'}
      options={CAMERAS}
      onChoose={(camera) => wishFor({ [of]: camera === 'none' ? null : camera })}
    />
  );
}

interface WordsProps {
  readonly label: string;
  readonly value: string;
  /** What stands in the clip when nothing is typed. */
  readonly placeholder: string;
  readonly onType: (typed: string) => void;
}

function Words({ label, value, placeholder, onType }: WordsProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={value}
        maxLength={60}
        autoComplete="off"
        placeholder={placeholder}
        onChange={(event) => onType(event.currentTarget.value)}
      />
    </div>
  );
}

function Tick({ label, value, onChange }: { label: string; value: boolean; onChange: (value: boolean) => void }) {
  return (
    <label className="showing-tick">
      <input type="checkbox" checked={value} onChange={(event) => onChange(event.currentTarget.checked)} />
      <span>{label}</span>
    </label>
  );
}

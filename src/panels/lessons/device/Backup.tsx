import { useMemo, useRef, useState, type ChangeEvent } from 'react';
import {
  backUp,
  book,
  importRecords,
  LIMITS,
  planImport,
  readFile,
  type BookRecord,
  type FileReading,
  type Policy,
} from '../../../record';
import { BOOK_FILE_TOO_LARGE, HAND_OVER, sayBackup, sayRecords } from '../../../words/book/book';
import { sayWithStills, TOO_MANY_STILLS } from '../../../words/film/kept';
import { sayChange, sayPlan, sayRecovered } from '../../../words/book/import';
import { sayDay } from '../../../words/book/days';
import { Choice } from '../../fields/Choice';
import { navigation, useBook, useMayWrite } from '../navigation';
import { useNow } from '../useNow';
import { FILE_NOT_OPENED, ONE_FILE, TAKEN } from '../../../words/book/device';
import { SavedLook } from './SavedLook';

type Sound = Exclude<FileReading, { refused: string }>;

const titleOf = (record: BookRecord): string =>
  record.kind === 'lesson' ? `Lesson ${sayDay(record.date)}` : record.kind === 'still' ? 'Still' : record.name;

/** What a file would do, before it does it. */
function Preview({ reading, onDone }: { reading: Sound; onDone: (said: string | null) => void }) {
  const records = useBook((state) => state.records);
  const [policy, setPolicy] = useState<Policy>('newer');
  const plan = useMemo(() => planImport(records, reading, policy), [records, reading, policy]);
  const differs = plan.changed.length + plan.left.length > 0;
  const nothing = plan.added.length + plan.changed.length === 0;
  const take = (): void => onDone(importRecords(plan) ? TAKEN : 'Not taken.');
  return (
    <section className="lesson-note lesson-preview" aria-label="What this file would do">
      {[...sayRecovered(reading), ...sayPlan(plan)].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {plan.changed.length > 0 && (
        <ul>
          {plan.changed.slice(0, 12).map(({ ours, fields }) => (
            <li key={ours.id}>{sayChange(titleOf(ours), fields)}</li>
          ))}
          {plan.changed.length > 12 && <li>and {plan.changed.length - 12} more</li>}
        </ul>
      )}
      {differs && (
        <Choice
          label="Where both differ"
          value={policy}
          options={[
            { value: 'newer', text: 'Newer wins' },
            { value: 'ours', text: 'Keep mine' },
            { value: 'theirs', text: 'Take the file' },
          ]}
          onChoose={setPolicy}
        />
      )}
      <SavedLook text={reading.ownLook} />
      <div className="lesson-actions">
        {!nothing && (
          <button type="button" className="plain wide" onClick={take}>
            Take over
          </button>
        )}
        <button type="button" className="plain" onClick={() => onDone(null)}>
          {nothing ? 'Close' : 'Leave it'}
        </button>
      </div>
    </section>
  );
}

/** The whole book as a file, and back. */
export function Backup() {
  const state = useBook((one) => one);
  const now = useNow();
  const mayWrite = useMayWrite();
  const [reading, setReading] = useState<Sound>();
  const [problem, setProblem] = useState<string>();
  const [withStills, setWithStills] = useState(false);
  const stills = [...state.records.values()].filter(({ kind }) => kind === 'still').length;
  const input = useRef<HTMLInputElement>(null);

  const open = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const [file] = event.currentTarget.files ?? [];
    event.currentTarget.value = '';
    if (!file) return;
    setReading(undefined);
    // A character takes at most four bytes: looked at before anything is read.
    if (file.size > LIMITS.fileText * 4) return setProblem(BOOK_FILE_TOO_LARGE);
    try {
      const read = readFile(await file.text());
      if ('refused' in read) setProblem(read.refused);
      else {
        setProblem(undefined);
        setReading(read);
      }
    } catch {
      setProblem(FILE_NOT_OPENED);
    }
    return undefined;
  };

  return (
    <>
      <p>{ONE_FILE}</p>
      <p className="lesson-state">{sayBackup(state, Math.max(now, state.meta.lastBackupMs ?? 0))}</p>
      {stills > 0 && (
        <label className="check">
          <input
            type="checkbox"
            checked={withStills}
            onChange={({ currentTarget }) => setWithStills(currentTarget.checked)}
          />
          {sayWithStills(stills)}
        </label>
      )}
      <div className="lesson-actions">
        <button
          type="button"
          className="plain wide"
          onClick={() => {
            if (!backUp(withStills && stills > 0)) setProblem(TOO_MANY_STILLS);
          }}
        >
          Save a backup
        </button>
        {mayWrite && (
          <button type="button" className="plain" onClick={() => input.current?.click()}>
            Open a file …
          </button>
        )}
        <input
          ref={input}
          type="file"
          accept=".json,application/json"
          className="unseen"
          tabIndex={-1}
          aria-label="Lesson book file"
          onChange={(event) => void open(event)}
        />
      </div>
      {problem !== undefined && (
        <p className="lesson-note" role="alert">
          {problem}
        </p>
      )}
      {reading && (
        <Preview
          reading={reading}
          onDone={(said) => {
            setReading(undefined);
            navigation.setState({ said });
          }}
        />
      )}
      <p className="fine">
        {HAND_OVER} {sayRecords(book.state.getState().records.size)}
      </p>
    </>
  );
}

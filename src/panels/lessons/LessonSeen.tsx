import { useEffect, useMemo, useState, type ReactNode } from 'react';
import type { LessonRecord } from '../../record';
import { desk, useDesk, type CheckpointId, type Document } from '../../store';
import { referenceSearch } from '../../store/effects/referenceSearch';
import { createSeenReader, type SeenThen } from '../../store/solver/seenThen';
import { solverClient } from '../../store/solver/solverClient';
import type { Answer } from '../../solving/diagnosis/solverJobs';
import { ALIKE, CAUSES, FROM_WHERE, LOOKING_FOR_CAUSES, sayMatch } from '../../words/why/sightings';
import { CauseItem } from '../seen/CauseItem';
import { SeenEntry } from '../seen/SeenEntry';
import { MarkSaid, SeenSaid } from '../seen/SeenSaid';
import { useLessonDesk } from './lessonDesk';
import '../why/why.css';

/** What is known of a document's marks; undefined while its reference swing is being found. */
function useSeenThen(document: Document): ReturnType<ReturnType<typeof createSeenReader>> {
  const [read] = useState(createSeenReader);
  const references = useDesk((state) => state.references);
  const { player, club } = document;
  useEffect(() => referenceSearch.want({ player, club }), [player, club]);
  return useMemo(() => read(document, { ...desk.getState(), references }), [read, document, references]);
}

/** What was seen in a lesson, entered there as on the desk; `note`: what is said of a mark below it. */
function SeenHere({ lesson, note }: { lesson: LessonRecord; note: (id: CheckpointId) => ReactNode }) {
  const { document, mayWrite, edit: change } = useLessonDesk(lesson);
  return (
    <SeenEntry
      seen={document.seen}
      disabled={!mayWrite}
      note={note}
      onSee={(id, sighting) =>
        change(sighting ? 'What I saw' : 'Clear what I saw', (desk) => ({
          ...desk,
          seen: { ...desk.seen, [id]: sighting },
        }))
      }
    />
  );
}

/** What was seen in the lesson that is open on the desk. Its causes stand in the desk's own drawer. */
export const OpenSeen = ({ lesson }: { lesson: LessonRecord }) => (
  <SeenHere lesson={lesson} note={(id) => <SeenSaid id={id} />} />
);

/** What was seen in a closed lesson, with what the camera made of it and the causes, to be read: the desk shows something else. */
export function ClosedSeen({ lesson }: { lesson: LessonRecord }) {
  const { seen } = lesson.now;
  const found = useSeenThen(lesson.now);
  const then = found && 'problem' in found ? undefined : found;
  return (
    <>
      <SeenHere
        lesson={lesson}
        note={(id) => then && <MarkSaid id={id} sighting={seen[id]} honest={then.honest[id]} bands={then.bands} />}
      />
      {(seen.leadArmParallel !== null || seen.shaftParallel !== null) &&
        (found && 'problem' in found ? <p>{found.problem}</p> : <Causes then={then} />)}
    </>
  );
}

/** Causes with nothing to press. */
function Causes({ then }: { then: SeenThen | undefined }) {
  const [answered, setAnswered] = useState<{ readonly to: SeenThen; readonly answer: Answer | undefined }>();
  useEffect(() => {
    if (!then?.job) return;
    let isOver = false;
    void solverClient.answerOnce(then.job).then((answer) => {
      if (!isOver) setAnswered({ to: then, answer });
    });
    return () => {
      isOver = true;
    };
  }, [then]);
  const answer = answered?.to === then ? answered?.answer : undefined;
  if (!then || !answer) return <p>{LOOKING_FOR_CAUSES}</p>;
  if (answer.kind === 'refused') return <p>{answer.message}</p>;
  if (answer.kind !== 'match') return null;
  return (
    <>
      <p className="seen-causes">{sayMatch(answer.causes)}</p>
      <p className="seen-alike">{ALIKE}</p>
      <ol className="explanations" aria-label={CAUSES}>
        {answer.causes.map((cause) => (
          <CauseItem key={cause.dials.join('+')} cause={cause} bands={then.bands} />
        ))}
      </ol>
      <p className="fine">{FROM_WHERE}</p>
    </>
  );
}

import { useEffect } from 'react';
import { useDerived, useDesk } from '../../store';
import { NOT_EXAGGERATED } from '../../words';
import { ClipForm } from './clip/ClipForm';
import { Files } from './Files';
import { NextStep } from '../lessons/NextStep';
import { LinkForm } from './LinkForm';
import { PaperForm } from './sheet/PaperForm';
import { exposeFrames } from './probe';
import { WorkNote } from './task/WorkNote';
import { NO_SWING_YET } from '../../words/showing/forms';
import './showing.css';

/** The Clip drawer: what to show, make it, hand it on. */
export default function Showing() {
  useEffect(exposeFrames, []);
  const ready = useDerived(({ status }) => status === 'ready');
  const isDoubled = useDesk(({ session }) => session.exaggerate);
  return (
    <div className="showing">
      <WorkNote />
      <Files />
      {ready ? (
        <>
          {isDoubled && <p>{NOT_EXAGGERATED}</p>}
          <ClipForm />
          <PaperForm />
        </>
      ) : (
        <p>{NO_SWING_YET}</p>
      )}
      <LinkForm />
      <NextStep from="clip" />
    </div>
  );
}

import { useEffect } from 'react';
import { useDerived } from '../../store';
import { ClipForm } from './ClipForm';
import { Files } from './Files';
import { LinkForm } from './LinkForm';
import { PaperForm } from './PaperForm';
import { exposeFrames } from './probe';
import { WorkNote } from './WorkNote';
import './showing.css';

/** The Clip drawer: what to show, make it, hand it on. */
export default function Showing() {
  useEffect(exposeFrames, []);
  const ready = useDerived(({ status }) => status === 'ready');
  return (
    <div className="showing">
      <WorkNote />
      <Files />
      {ready ? (
        <>
          <ClipForm />
          <PaperForm />
        </>
      ) : (
        <p>There is no swing to show yet. Finish the set-up first.</p>
      )}
      <LinkForm />
    </div>
  );
}

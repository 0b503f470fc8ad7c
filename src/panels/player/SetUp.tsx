import type { ReactNode } from 'react';
import { SET_UP_PARTS, showSetUp, useDesk, type SetUpPart } from '../../store';
import { ErrorBoundary } from '../loading/ErrorBoundary';
import { CAMERA } from './camera';
import { SetUpClub } from './SetUpClub';
import { SetUpFace } from './SetUpFace';
import { SetUpPlayer } from './SetUpPlayer';
import { SetUpReading, SetUpShow } from './SetUpReading';
import { SetUpPelvis, SetUpTempo, SetUpTop } from './SetUpTop';

const PARTS: Readonly<Record<SetUpPart, { readonly name: string; readonly holds: ReactNode }>> = {
  player: { name: 'Player', holds: <SetUpPlayer /> },
  club: {
    name: 'Club',
    holds: (
      <>
        <SetUpClub />
        <SetUpFace />
      </>
    ),
  },
  top: {
    name: 'Top and tempo',
    holds: (
      <>
        <SetUpTop />
        <SetUpTempo />
        <SetUpPelvis />
      </>
    ),
  },
  camera: {
    name: 'Camera',
    holds: (
      <ErrorBoundary part="The camera">
        <CAMERA.Part />
      </ErrorBoundary>
    ),
  },
  bands: { name: 'Bands', holds: <SetUpReading /> },
  units: { name: 'Units', holds: <SetUpShow /> },
};

/** Everything that is not one of the three movements, a section at a time. Every change is undoable. */
export function SetUp() {
  const shown = useDesk(({ session }) => session.setUpPart);
  return (
    <div className="set-up">
      <nav className="drawer-index" aria-label="Sections">
        {SET_UP_PARTS.map((id) => (
          <button key={id} type="button" aria-current={id === shown} onClick={() => showSetUp(id)}>
            {PARTS[id].name}
          </button>
        ))}
      </nav>
      {/* Those out of sight stay: what is typed in them is not lost. */}
      {SET_UP_PARTS.map((id) => (
        <div key={id} className="set-up-part" hidden={id !== shown}>
          {PARTS[id].holds}
        </div>
      ))}
    </div>
  );
}

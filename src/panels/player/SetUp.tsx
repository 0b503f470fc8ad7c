import { DrawerIndex } from '../shell/DrawerIndex';
import { ErrorBoundary } from '../loading/ErrorBoundary';
import { CAMERA } from './camera';
import { SetUpClub } from './SetUpClub';
import { SetUpFace } from './SetUpFace';
import { SetUpPlayer } from './SetUpPlayer';
import { SetUpReading, SetUpShow } from './SetUpReading';
import { SetUpPelvis, SetUpTempo, SetUpTop } from './SetUpTop';

const SECTIONS = [
  { id: 'set-up-player', name: 'Player' },
  { id: 'set-up-club', name: 'Club' },
  { id: 'set-up-tempo', name: 'Tempo and top' },
  { id: 'set-up-reading', name: 'Bands' },
  { id: 'set-up-face', name: 'Face' },
  { id: 'set-up-camera', name: 'Camera' },
  { id: 'set-up-show', name: 'Units' },
];

/** Everything that is not one of the three movements. Every change is undoable. */
export const SetUp = () => (
  <div className="set-up">
    <DrawerIndex label="Sections" sections={SECTIONS} />
    <SetUpPlayer />
    <SetUpClub />
    <SetUpTempo />
    <SetUpTop />
    <SetUpPelvis />
    <SetUpReading />
    <SetUpFace />
    <ErrorBoundary part="The camera">
      <CAMERA.Part />
    </ErrorBoundary>
    <SetUpShow />
  </div>
);

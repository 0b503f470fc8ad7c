import { SetUpCamera } from './SetUpCamera';
import { SetUpClub } from './SetUpClub';
import { SetUpPlayer } from './SetUpPlayer';
import { SetUpReading, SetUpShow } from './SetUpReading';
import { SetUpPelvis, SetUpTempo, SetUpTop } from './SetUpTop';

/** Everything that is not one of the three movements. Every change is undoable. */
export const SetUp = () => (
  <div className="set-up">
    <SetUpPlayer />
    <SetUpClub />
    <SetUpTempo />
    <SetUpTop />
    <SetUpPelvis />
    <SetUpReading />
    <SetUpCamera />
    <SetUpShow />
  </div>
);

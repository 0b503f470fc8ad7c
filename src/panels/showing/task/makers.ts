import { fileName } from '../../../export';
import { currentPose, desk, stagePicture } from '../../../store';
import { sayWho } from '../../../words/showing/who';
import { readOwnLook } from '../own/ownLook';
import { make, showing, subjectAsSeen, subjectNow } from './showingStore';

// Each maker fetches what it needs when it is asked: nobody waits for encoders at the start.

/** Makes the clip asked for in the form. */
export const makeClip = (): Promise<void> =>
  make('Fetching the clip maker', async (companion) => {
    const { wish } = showing.getState();
    const who = sayWho(desk.getState().document);
    const [{ makeClip: film }, subject] = await Promise.all([import('../../../export/clip/makeClip'), subjectNow()]);
    return film(subject, wish, who, await readOwnLook(), companion);
  });

/** Makes a PNG of this moment, one, two or four times the usual size. */
export const makeStill = (times: 1 | 2 | 4): Promise<void> =>
  make('Drawing the still', async () => {
    const picture = stagePicture.getState().drawn;
    const shown = { t: desk.getState().session.t, pose: currentPose().slice(), picture, times };
    const [{ makePng }, subject] = await Promise.all([import('../../../export/picture/still'), subjectAsSeen()]);
    return makePng(subject, shown);
  });

/** Makes a PNG of both checkpoints with their numbers, upright for a phone or wide. */
export const makeNumbers = (shape: '4:5' | '16:9'): Promise<void> =>
  make('Drawing the still', async (companion) => {
    const who = sayWho(desk.getState().document);
    const [{ makeHandout }, subject, own] = await Promise.all([
      import('../../../export/picture/makeHandout'),
      subjectNow(),
      readOwnLook(),
    ]);
    return makeHandout(subject, shape, who, own, companion);
  });

/** Makes an SVG of both plates. */
export const makePlates = (): Promise<void> =>
  make('Drawing the plates', async () => {
    const [{ makePlatesSvg }, subject] = await Promise.all([import('../../../export/picture/still'), subjectAsSeen()]);
    return makePlatesSvg(subject);
  });

/** Makes a 3D model file of the swing. */
export const makeModel = (): Promise<void> =>
  make('Building the model', async () => {
    const [{ toModelFile }, subject] = await Promise.all([import('../../../export/files/modelFile'), subjectNow()]);
    return {
      name: `${fileName('model')}.glb`,
      format: 'glTF binary, animated',
      blob: await toModelFile(subject, subject.now),
    };
  });

/** Makes a CSV table of the swing and the one it is compared with. */
export const makeTable = (): Promise<void> =>
  make('Writing the table', async () => {
    const [{ toTable }, { now, after }] = await Promise.all([import('../../../export/files/table'), subjectNow()]);
    const text = toTable([now, after].map(({ label, ...take }) => ({ name: label, ...take })));
    return {
      name: `${fileName('table')}.csv`,
      format: 'CSV, two swings',
      blob: new Blob([text], { type: 'text/csv' }),
    };
  });

import { CHECKPOINT_IDS, type CheckpointId } from '../../../reading/checkpointTable';
import { book, deskLink } from '../../../record';
import { keepFilmWith } from '../../../record/film/filmEdits';
import { current } from '../../../store';
import { setSeen } from '../../../store/desk/whyActions';
import type { OpenVideo } from '../../../video/video';
import { KEPT } from '../../../words/film/kept';
import type { PlaceId } from '../filmMarks';
import { filmStore } from '../filmStore';
import { makeStill, type Still } from './stills';
import { toKeptFilm } from './toKept';

const PLACE_OF: Readonly<Record<CheckpointId, PlaceId>> = { leadArmParallel: 'arm', shaftParallel: 'shaft' };

/** Takes the film's readings as seen, and keeps its marks with the open lesson. Says what came of it. */
export async function keepFilm(withStills: boolean): Promise<void> {
  const { video, sheet, notes, answer } = filmStore.getState();
  if (!video || !answer || !('camera' in answer)) return;
  for (const id of CHECKPOINT_IDS) {
    const reading = answer[id];
    if (reading) setSeen(id, { cm: 100 * reading.value, plusMinusCm: 100 * reading.plusMinus, from: 'film' });
  }
  filmStore.setState({ kept: KEPT.readings });
  if (!deskLink.openLesson()) return;
  const film = toKeptFilm(video.info, sheet, notes, answer, current().referenceSwing.rig.club.length);
  const frames = CHECKPOINT_IDS.flatMap((id) => {
    const marked = sheet[PLACE_OF[id]];
    return marked && answer[id] ? [{ of: id, frame: marked.frame }] : [];
  });
  const stills = withStills ? await takeStills(video, frames) : [];
  deskLink.follow();
  // Read again: making stills takes a moment.
  const lesson = deskLink.openLesson();
  if (!lesson) return;
  const { records } = book.state.getState();
  const edit = keepFilmWith(records, lesson, () => book.birth(), film, stills);
  if (!edit || !book.apply(edit)) return;
  const said = !withStills ? KEPT.lesson : stills.length === frames.length ? KEPT.stills : KEPT.noStills;
  if (filmStore.getState().video === video) filmStore.setState({ kept: said });
}

async function takeStills(
  video: OpenVideo,
  frames: readonly { readonly of: CheckpointId; readonly frame: number }[],
): Promise<(Still & { readonly of: CheckpointId })[]> {
  const stills: (Still & { readonly of: CheckpointId })[] = [];
  for (const { of, frame } of frames) {
    // One after the other: only the last frame that was asked for is answered.
    const picture = await video.frame(frame).catch(() => undefined);
    const still = picture && (await makeStill(picture).catch(() => undefined));
    picture?.close();
    if (still) stills.push({ of, ...still });
  }
  return stills;
}

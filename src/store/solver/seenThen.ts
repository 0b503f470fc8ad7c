import type { Bands } from '../../reading/verdicts';
import type { Job } from '../../solving/diagnosis/solverJobs';
import { createDeriver } from '../derive/deriver';
import { createHonestSeen, type HonestSeen } from '../derive/honestSeen';
import { NO_VERDICTS } from '../derive/verdictHysteresis';
import { FRESH_SESSION } from '../desk/session';
import type { DeskState } from '../desk/state';
import { toArmAngle } from '../document/convert';
import type { Document } from '../document/document';
import { toMatchJob } from './solverClient';

/** What is known of the marks in a document that is not on the desk. */
export interface SeenThen {
  /** The marks with the camera of that document reckoned in. */
  readonly honest: HonestSeen;
  /** The bands of that document. */
  readonly bands: Bands;
  /** Asks for the causes; undefined without a mark. */
  readonly job: Job | undefined;
}

/** Reads what was seen in documents beside the desk's; undefined while the reference swing is being found, and why where there is none. */
export function createSeenReader(): (
  document: Document,
  desk: DeskState,
) => SeenThen | { readonly problem: string } | undefined {
  const { derive } = createDeriver();
  const honestSeen = createHonestSeen();
  return (document, desk) => {
    const state = { ...desk, document, session: FRESH_SESSION, gesture: null, verdicts: NO_VERDICTS };
    const { status, problem, player, referenceSwing, exactBands: bands } = derive(state);
    if (problem !== undefined) return { problem };
    if (status !== 'ready') return undefined;
    const armAngle = toArmAngle(document);
    const honest = honestSeen(document.seen, document.camera.downTheLine, player, referenceSwing, armAngle);
    return { honest, bands, job: toMatchJob(honest, referenceSwing, bands, armAngle) };
  };
}

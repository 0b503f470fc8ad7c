import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import type { Shot } from '../../flight/shot';
import { isReached } from '../../reading/checkpoints';
import type { Delivery } from '../../reading/delivery/delivery';
import {
  CHECKPOINT_NAMES,
  findCautions,
  findPractice,
  NOTHING_TO_CHANGE,
  sayBand,
  sayCheckpoint,
  sayCurve,
  sayFaceBand,
  sayNoShot,
  sayPath,
  sayStart,
  type DeliveryWords,
  type Drill,
  type Practice,
} from '../../words';
import { codeOf, codePath } from '../picture/qrCode';
import { toAddress } from '../link/link';
import { drawPlate, type PlateImage } from '../picture/plateImage';
import { changesOf, sayChanges, type ExportSnapshot, type ShownSwing } from '../task/exportSnapshot';

/** Everything on a practice sheet, in words and drawings. */
export interface SheetContent {
  readonly plates: readonly {
    readonly take: string;
    readonly dialled: string;
    readonly plates: readonly PlateImage[];
  }[];
  readonly readings: readonly Reading[];
  readonly plan: readonly string[];
  readonly feels: readonly string[];
  readonly drills: readonly Drill[];
  readonly cautions: readonly string[];
  readonly address: string;
  /** The code as a path, and how many squares it is wide. */
  readonly code: { readonly path: string; readonly size: number };
}

/** A line of the table of readings. */
interface Reading {
  readonly where: string;
  readonly now: string;
  readonly after: string;
  readonly band: string;
}

/** Drills that fit on one page. */
const MOST_DRILLS = 4;

/** Drawn for paper: plates on a light ground, whatever the board. */
export function layOutSheet(subject: ExportSnapshot, base: string): SheetContent {
  const { now, after, derived, document } = subject;
  const changes = changesOf(subject);
  const practices = changes.flatMap(({ id, change }) => findPractice(id, change) ?? []);
  const address = toAddress(document, base);
  const squares = codeOf(address);
  const plan = sayChanges(subject);
  return {
    plates: [now, after].map((take) => ({
      take: take.label,
      dialled: take.dialled,
      plates: CHECKPOINT_IDS.map((id) => drawPlate(subject, take, id, 'light', 0.8)),
    })),
    readings: [
      ...CHECKPOINT_IDS.map((id) => {
        const say = (checkpoint: typeof now.checkpoints.leadArmParallel): string => {
          const { word, why } = sayCheckpoint(id, checkpoint, derived.bands, document.units);
          return isReached(checkpoint) ? `${word}: ${why}` : word;
        };
        return {
          where: `${CHECKPOINT_NAMES[id].title} (${CHECKPOINT_NAMES[id].position})`,
          now: say(now.checkpoints[id]),
          after: say(after.checkpoints[id]),
          band: sayBand(id, derived.bands, document.units),
        };
      }),
      ...ballReadings(subject),
    ],
    plan: plan.length > 0 ? plan : [NOTHING_TO_CHANGE],
    feels: practices.slice(0, 3).map(({ feel }) => feel),
    drills: pickDrills(practices),
    cautions: findCautions(practices),
    address,
    code: { path: codePath(squares), size: squares.length },
  };
}

/** Path, face and ball of both swings: a number that hangs on how far the face comes back carries its band. */
function ballReadings({ now, after, derived, document }: ExportSnapshot): Reading[] {
  const both = (label: string, say: (take: ShownSwing) => string): Reading => ({
    where: label,
    now: say(now),
    after: say(after),
    band: '',
  });
  const onDelivery =
    (say: (delivery: Delivery) => DeliveryWords) =>
    (take: ShownSwing): string =>
      'missing' in take.delivery ? sayNoShot(take.delivery) : say(take.delivery).text;
  const onShot =
    (say: (shot: Shot) => DeliveryWords) =>
    (take: ShownSwing): string =>
      'missing' in take.shot ? sayNoShot(take.shot) : say(take.shot).text;
  const { handed } = derived.player;
  return [
    both(
      'Path',
      onDelivery(({ path }) => sayPath(path)),
    ),
    both('Face', onDelivery(sayFaceBand)),
    both(
      'Start',
      onShot((shot) => sayStart(shot, handed)),
    ),
    both(
      'Curve',
      onShot((shot) => sayCurve(shot, handed, document.units)),
    ),
  ];
}

/** In turn from each movement, so that none goes without. */
function pickDrills(practices: readonly Practice[]): readonly Drill[] {
  const rounds = [0, 1, 2].flatMap((i) => practices.flatMap(({ drills }) => drills[i] ?? []));
  return rounds.slice(0, MOST_DRILLS);
}

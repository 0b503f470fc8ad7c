import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { isReached } from '../../reading/checkpoints';
import type { PlanDrill, PlanNames } from '../../store/document/chosenPlan';
import { changesBetween } from '../../store/plan/draftPlan';
import {
  CAUTIONS,
  CHECKPOINT_NAMES,
  NO_PLAN,
  NOTHING_TO_CHANGE,
  sayBand,
  sayCheckpoint,
  sayNoShot,
  sayPathAndFace,
} from '../../words';
import { sayDay } from '../../words/book/days';
import { sayWho } from '../../words/showing/who';
import { sayCurve, sayStart } from '../../words/swing/shot';
import { sayTask } from '../../words/why/planText';
import { codeOf, codePath } from '../picture/qrCode';
import { toCodeAddress } from '../link/link';
import { drawPlate, type PlateImage } from '../picture/plateImage';
import { drawDrill, type DrillFigure } from './drillFigure';
import { sayChanges, type ExportSnapshot, type ShownSwing } from '../task/exportSnapshot';

/** Everything on a practice sheet, in words and drawings. */
export interface SheetContent {
  /** The task in a few words. */
  readonly title: string;
  readonly names: PlanNames;
  /** "7-iron, 1.78 m" */
  readonly who: string;
  readonly plates: readonly {
    readonly take: string;
    readonly dialled: string;
    readonly plates: readonly PlateImage[];
  }[];
  readonly readings: readonly Reading[];
  readonly plan: readonly string[];
  readonly feel: string;
  readonly drills: readonly SheetDrill[];
  /** The coach's own words. */
  readonly words: string;
  /** "2 Dec 2026"; null without a next lesson. */
  readonly next: string | null;
  readonly cautions: readonly string[];
  readonly address: string;
  /** The code as a path, and how many squares it is wide. */
  readonly code: { readonly path: string; readonly size: number };
}

/** A drill, with the body where it is practised if that is known. */
interface SheetDrill extends PlanDrill {
  readonly figure: DrillFigure | undefined;
}

/** A line of the table of readings. */
interface Reading {
  readonly where: string;
  readonly now: string;
  readonly after: string;
  readonly band: string;
}

const NO_NAMES: PlanNames = { player: null, coach: null };

/** Drawn for paper: plates on a light ground, whatever the board. What to practise is that of the chosen plan; without one there is none. */
export function layOutSheet(subject: ExportSnapshot, base: string): SheetContent {
  const { now, after, derived, document } = subject;
  const plan = subject.afterId === 'plan' ? document.plan : null;
  const { address } = toCodeAddress(document, base);
  const squares = codeOf(address);
  const lines = plan ? sayChanges(subject) : [NO_PLAN];
  return {
    title: plan ? sayTask(changesBetween(plan.from, plan.movements), now.swing.movements) : 'Practice sheet',
    names: plan?.names ?? NO_NAMES,
    who: sayWho(document),
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
          where: CHECKPOINT_NAMES[id].title,
          now: say(now.checkpoints[id]),
          after: say(after.checkpoints[id]),
          band: sayBand(id, derived.bands, document.units),
        };
      }),
      ballReading(subject),
      ...flightReading(subject),
    ],
    plan: lines.length > 0 ? lines : [NOTHING_TO_CHANGE],
    feel: plan?.feel ?? '',
    drills: (plan?.drills ?? []).map((drill) => ({ ...drill, figure: drawDrill(drill.name, derived, after) })),
    words: plan?.words ?? '',
    next: plan?.nextDate ? sayDay(plan.nextDate) : null,
    cautions: plan && plan.cautions.length > 0 ? plan.cautions : CAUTIONS,
    address,
    code: { path: codePath(squares), size: squares.length },
  };
}

/** Path and face of both swings, in one line of the table: there is little room. The face carries its band. */
function ballReading({ now, after }: ExportSnapshot): Reading {
  const say = ({ delivery }: ShownSwing): string =>
    'missing' in delivery ? sayNoShot(delivery) : sayPathAndFace(delivery);
  return { where: 'At the ball', now: say(now), after: say(after), band: '' };
}

/** Where the ball starts and how it curves, with the band of the face; left out where neither swing meets the ball. */
function flightReading({ now, after, derived: { player }, document: { units } }: ExportSnapshot): readonly Reading[] {
  if ('missing' in now.shot && 'missing' in after.shot) return [];
  const say = ({ shot }: ShownSwing): string => {
    if ('missing' in shot) return sayNoShot(shot);
    const [start, curve] = [sayStart(shot, player.handed), sayCurve(shot, player.handed, units)];
    return `${start.label} ${start.text}. ${curve.label} ${curve.text}.`;
  };
  return [{ where: 'The ball', now: say(now), after: say(after), band: '' }];
}

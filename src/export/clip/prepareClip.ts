import { DIALS } from '../../model/movements';
import { readTokens } from '../../scene/setting/theme';
import { toMarked } from '../files/embedded';
import type { ClipWish, ClipJob, OwnLook } from './clipJob';
import type { Staging } from './clipStage';
import { toCodeAddress } from '../link/link';
import { changesBetween } from '../../store/plan/draftPlan';
import { sayTask } from '../../words/why/planText';
import { sayCurve, sayNoShot, sayStart } from '../../words';
import { sayFeel, sayWholeChange } from '../../words/showing/handout';
import { readInks, type Inks } from '../picture/canvasPen';
import { readableOn } from '../picture/ownColour';
import type { ExportSnapshot, ShownSwing } from '../task/exportSnapshot';

/** What the scene needs besides the swings, with the page's colours. */
export const stagingOf = ({ derived, document }: ExportSnapshot): Staging => ({
  body: derived.body,
  club: derived.club,
  handed: derived.player.handed,
  referenceSwing: derived.referenceSwing,
  board: document.board,
  tokens: readTokens(),
});

/** The title where none was typed: the task of the plan, or how many swings are shown. */
function titleOf({ afterId, document: { plan }, now }: ExportSnapshot, isAlone: boolean): string {
  if (isAlone) return 'One swing';
  return afterId === 'plan' && plan
    ? sayTask(changesBetween(plan.from, plan.movements), now.swing.movements)
    : 'Two swings';
}

/** How far each dial goes from one swing to the other, model units. */
export const changesOf = ({ now, after }: ExportSnapshot) =>
  DIALS.map(({ id }) => ({ id, change: after.swing.movements[id] - now.swing.movements[id] }));

/** Where the ball starts and how it curves, with the band of the face. */
function sayBall({ shot }: ShownSwing, { derived: { player }, document: { units } }: ExportSnapshot): string[] {
  if ('missing' in shot) return [sayNoShot(shot)];
  const [start, curve] = [sayStart(shot, player.handed), sayCurve(shot, player.handed, units)];
  return [`Ball: ${start.label.toLowerCase()} ${start.text}`, `${curve.label} ${curve.text}`];
}

/** The coach's own look with its colour as it can be read on this paper. */
export const ownOn = (own: OwnLook, { paper, ink }: Inks): OwnLook => ({
  ...own,
  colour: own.colour && readableOn(own.colour, paper, ink),
});

/** Prepares a clip on the page, because colours are only available there. `who` names the club and the player. */
export function prepareClip(subject: ExportSnapshot, wish: ClipWish, who: string, own: OwnLook): ClipJob {
  const { derived, document, now, after } = subject;
  const changes = changesOf(subject);
  // Two swings that are the same are shown as one.
  const isAlone = wish.arrangement === 'one' || changes.every(({ change }) => Math.abs(change) < 1e-9);
  const takes = isAlone ? [now] : [now, after];
  const plan = subject.afterId === 'plan' && !isAlone ? document.plan : null;
  const inks = readInks();
  return {
    wish,
    staging: stagingOf(subject),
    takes,
    bands: derived.bands,
    units: document.units,
    inks,
    own: ownOn(own, inks),
    who,
    title: wish.title.trim() || titleOf(subject, isAlone),
    name: wish.name.trim() || (plan?.names.player ?? ''),
    isPlan: plan !== null,
    feel: sayFeel(plan?.feel ?? ''),
    change: sayWholeChange(changes, now.swing.movements, document.units),
    balls: takes.map((take) => sayBall(take, subject)),
    address: toCodeAddress(document, location.href).address,
    mark: toMarked(document),
  };
}

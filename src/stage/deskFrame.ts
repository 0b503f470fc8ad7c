import { isReached, type Checkpoint } from '../reading/checkpoints';
import { SceneFrame, type SwingShown } from '../scene/sceneFrame';
import { current, currentPose, desk, noteDrawn, type Derived, type DeskState } from '../store';
import { fanTimes, ghostTime } from '../store/desk/compared';
import type { PinId } from '../scene/figure/jointPins';
import { pinStore } from './pins/pinStore';

/** The frame of the desk. */
export class DeskFrame extends SceneFrame {
  private last: DeskState | undefined;
  private lastHeld: PinId | undefined;

  /** Moves everything to what the desk shows now; does nothing when nothing changed. */
  update(): void {
    const state = desk.getState();
    const { held } = pinStore.getState();
    if (this.last === state && this.lastHeld === held) return;
    this.last = state;
    this.lastHeld = held;
    const derived = current();
    const pose = currentPose();
    const { ghostSwing, fanSwings } = derived;
    this.show({
      body: derived.body,
      club: derived.club,
      handed: derived.player.handed,
      swing: derived.swing,
      referenceSwing: derived.referenceSwing,
      t: state.session.t,
      pose,
      reference: { swing: derived.referenceSwing, t: referenceTime(derived, state) },
      ...struckOf(derived, state.session.wholeFlight),
      ...(offersPins(state) ? { pins: { held } } : {}),
      ...(ghostSwing ? { ghost: { swing: ghostSwing, t: ghostTime(state) } } : {}),
      ...(fanSwings.length > 0 ? { fan: fanOf(fanSwings, fanTimes(state)) } : {}),
    });
    noteDrawn(pose, this.placement);
  }
}

const fanOf = (swings: Derived['fanSwings'], times: readonly number[]) =>
  swings.map((swing, i) => ({ swing, t: times[i] }));

/** Joints can be taken hold of where the dials are what moves the figure: not while it plays, and not on the joints bench. */
const offersPins = ({ session }: DeskState): boolean =>
  !session.playing && session.bench === null && !session.trial?.isPlaying;

/** The ball leaves where the delivery strikes it. Its track is worked out when it is on its way, not at every step of a slider. */
function struckOf({ delivery, shot }: Derived, isWhole: boolean): Pick<SwingShown, 'struck'> {
  if ('missing' in delivery || 'missing' in shot) return {};
  const { flight } = shot;
  return {
    struck: {
      t: delivery.t,
      isWhole,
      get track() {
        return flight.track;
      },
    },
  };
}

/** A playhead held at a checkpoint is compared with the reference at its own checkpoint. */
function referenceTime({ referenceCheckpoints: read }: Derived, { session: { held, t } }: DeskState): number {
  const checkpoint: Checkpoint | undefined =
    held === 'P5' ? read.leadArmParallel : held === 'P6' ? read.shaftParallel : undefined;
  return checkpoint && isReached(checkpoint) ? checkpoint.t : t;
}

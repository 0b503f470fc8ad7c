import { isReached, type Checkpoint } from '../reading/checkpoints';
import { SwingScene, type SwingShown } from '../scene/swingScene';
import { current, currentPose, desk, noteDrawn, type Derived, type DeskState } from '../store';
import { ghostTime } from '../store/derive/compare';

/** What the last update drew, to draw again only what changed. */
interface Drawn {
  state: DeskState | undefined;
  eyes: boolean;
}

/** The scene of the desk: `update` moves it to what the desk shows now and does nothing when nothing changed. */
export class DeskScene extends SwingScene {
  private readonly last: Drawn = { state: undefined, eyes: false };

  /** Moves everything to what the desk shows. `eyes`: seen through the player's eyes. Answers whether anything changed. */
  update(eyes: boolean): boolean {
    const state = desk.getState();
    const { last } = this;
    if (last.state === state && last.eyes === eyes) return false;
    const derived = current();
    const { t } = state.session;
    const pose = currentPose();
    const { ghostSwing } = derived;
    this.show({
      body: derived.body,
      club: derived.club,
      handed: derived.player.handed,
      swing: derived.swing,
      referenceSwing: derived.referenceSwing,
      t,
      pose,
      throughEyes: eyes,
      reference: { swing: derived.referenceSwing, t: referenceTime(derived, state) },
      ...struckOf(derived),
      ...(ghostSwing ? { ghost: { swing: ghostSwing, t: ghostTime(state) } } : {}),
    });
    noteDrawn(pose, this.model!.placement);
    Object.assign(last, { state, eyes });
    return true;
  }
}

/** The ball leaves where the delivery strikes it. Its track is worked out when it is on its way, not at every step of a slider. */
function struckOf({ delivery, shot }: Derived): Pick<SwingShown, 'struck'> {
  if ('missing' in delivery || 'missing' in shot) return {};
  const { flight } = shot;
  return {
    struck: {
      t: delivery.t,
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

import type { Rad } from '../../math/angle';
import { STILL, type MovementId } from '../../model/movements';
import { CLUB_IDS, type ClubId } from '../../model/club';
import { isReached } from '../../reading/checkpoints';
import { withMovements } from '../../reading/swing';
import { deliverSwing, type DeliveredSwing, type DeliveryConditions } from '../playOut';
import { shippedSwings } from '../reference/shipped';
import { standOn, type ReferenceBook } from './players';
import type { TopSetUp } from '../../model/setUp';

/** What a movement does to one player with one club, from half of it the one way to half of it the other. NaN: not reached. */
export interface Gain {
  /** m */
  readonly stature: number;
  readonly club: ClubId;
  /** Change of the bicep gap at lead arm parallel and of the head depth at shaft parallel, m. */
  readonly leadArmParallel: number;
  readonly shaftParallel: number;
  /** Change of the path, rad, + toward in-to-out. */
  readonly path: number;
  /** Change of the face, rad, + toward open: left as it comes, and returned. */
  readonly faceLeft: number;
  readonly faceReturned: number;
}

const PLAIN_TOP: TopSetUp = { handDepth: 0, handHeight: 0, turn: 0, wristSet: 0 };

/** Statures that a table of gains has rows for, m: those that ship, and the player's own. */
export function gainStatures(own?: number): number[] {
  const all = new Set(shippedSwings().map(({ statureM }) => statureM));
  if (own !== undefined) all.add(own);
  return [...all].toSorted((a, b) => a - b);
}

/**
 * What `amount` (model units, with sign) of a movement does to every height and club, around each one's own reference: half of it to
 * either side, so that it is a slope. Yields one gain after the other, heights in order, clubs from long to short.
 */
export function* gainsOf(
  movement: MovementId,
  amount: number,
  statures: readonly number[],
  book: ReferenceBook,
  conditions: DeliveryConditions & { readonly armAngle: Rad },
): Generator<Gain, void, void> {
  for (const stature of statures) {
    for (const club of CLUB_IDS) {
      const base = standOn(book, { stature, club }, PLAIN_TOP, conditions.armAngle);
      if (!base) continue;
      const at = (by: number): DeliveredSwing =>
        deliverSwing(base, withMovements(base.swing, { ...STILL, [movement]: STILL[movement] + by }), conditions);
      const [less, more] = [at(-amount / 2), at(amount / 2)];
      const difference = (read: (swing: DeliveredSwing) => number): number => read(more) - read(less);
      yield {
        stature,
        club,
        leadArmParallel: difference(({ checkpoints: { leadArmParallel: p5 } }) =>
          isReached(p5) ? p5.readings.bicepGap : NaN,
        ),
        shaftParallel: difference(({ checkpoints: { shaftParallel: p6 } }) =>
          isReached(p6) ? p6.readings.headDepth : NaN,
        ),
        path: difference(({ delivery }) => ('missing' in delivery ? NaN : delivery.path)),
        faceLeft: difference(({ delivery }) => ('missing' in delivery ? NaN : delivery.faceLeft)),
        faceReturned: difference(({ delivery }) => ('missing' in delivery ? NaN : delivery.faceReturned)),
      };
    }
  }
}

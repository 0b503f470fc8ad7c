import { dialOf, type MovementId } from '../../model/movements';
import { formatTyped, showLength } from '../numbers/numbers';
import { CAUTIONS } from '../swing/status';
import { RULE_OF_THUMB, type Origin, type Units } from '../numbers/units';

/** One exercise: what it is called, what to do (each step a sentence of at most 15 words), and how often. */
export interface Drill {
  readonly name: string;
  readonly how: readonly string[];
  readonly often: string;
}

/** How to practise one movement in one direction. Our own wording of common practice. */
export interface Practice {
  /** Exaggerates on purpose: feel is not real, and half of what is felt arrives. */
  readonly feel: string;
  readonly drills: readonly Drill[];
  /** What to mind here, on top of the usual cautions. */
  readonly cautions: readonly string[];
  readonly source: Origin;
}

type Way = 'more' | 'less';

const drill = (name: string, often: string, ...how: string[]): Drill => ({ name, how, often });
const practice = (feel: string, drills: readonly Drill[], ...cautions: string[]): Practice => ({
  feel,
  drills,
  cautions,
  source: RULE_OF_THUMB,
});

const WRIST_CARE = 'Stop short of the end of the wrist\u2019s range.';
const BACK_CARE = 'Bend and turn the back only as far as it goes easily.';
const HIP_CARE = 'Keep the knees over the feet while the hips turn.';

/** By movement, and whether its dial goes up (`more`) or down (`less`). */
const PRACTICE: Readonly<Record<MovementId, Readonly<Record<Way, Practice>>>> = {
  leadWristFlexion: {
    more: practice(
      'Feel the lead knuckles look at the ground long before the arm is parallel.',
      [
        drill(
          'Ruler on the wrist',
          '10 slow rehearsals, 5 balls, twice',
          'Tuck a ruler under the watch strap, over the back of the hand.',
          'From the top, press it against the hand until the arm is parallel.',
        ),
        drill(
          'Knuckles down',
          '8 times without a ball, 4 with',
          'Stop where the lead arm is parallel to the ground.',
          'Turn the knuckles down, look at the shaft, then swing through.',
        ),
        drill(
          'Lead hand alone',
          '10 half swings with a short iron',
          'Hold the club in the lead hand only.',
          'Swing hip to hip and keep the back of the wrist bowed.',
        ),
      ],
      WRIST_CARE,
    ),
    less: practice(
      'Feel the lead hand bent back as if it carried a small tray.',
      [
        drill(
          'Tray in the lead hand',
          '10 slow rehearsals, 5 balls, twice',
          'From the top, let the back of the lead hand tip toward the forearm.',
          'Stop at lead arm parallel and check that a crease shows.',
        ),
        drill(
          'Crease check',
          '8 times without a ball, 4 with',
          'Stop at lead arm parallel in front of a mirror.',
          'See a crease at the back of the wrist, then go on.',
        ),
      ],
      WRIST_CARE,
    ),
  },
  rotationRate: {
    more: practice(
      'Feel the chest race past the ball before the arms have started.',
      [
        drill(
          'Step and turn',
          '10 swings without a ball, 5 with',
          'Start with the feet together, step toward the target from the top.',
          'Turn belt and chest open as the foot lands.',
        ),
        drill(
          'Arms on the chest',
          '15 turns, slow to quick',
          'Cross the arms on the chest and take the golf posture.',
          'Turn from the top until the belt faces the target.',
        ),
      ],
      BACK_CARE,
      HIP_CARE,
    ),
    less: practice('Feel as if you do not turn at all until the arms are down.', [
      drill(
        'Back to the target',
        '10 slow rehearsals, 5 balls, twice',
        'From the top, lower the arms and keep the chest where it is.',
        'Stop at lead arm parallel: the chest still looks behind the ball.',
      ),
      drill(
        'Arms first',
        '8 times without a ball, 4 with',
        'Set the trail heel against a wall or a bag.',
        'Swing down and keep the heel on it until the arm is parallel.',
      ),
      drill('Count to two', '10 balls at half speed', 'Say one while the arms drop, two while the body turns.'),
    ]),
  },
  rotationDelay: {
    more: practice('Feel the arms fall all the way before the belt moves at all.', [
      drill(
        'Pause at the top',
        '10 balls at half speed',
        'Hold the top for a full second.',
        'Let the arms start, and the belt follow.',
      ),
      drill(
        'Pump and go',
        '8 times, a ball on the last pump',
        'Lower the arms to parallel and lift them again, twice, without turning.',
        'On the third, turn through and hit.',
      ),
    ]),
    less: practice(
      'Feel the belt start back to the target while the club still goes up.',
      [
        drill(
          'Bump before the top',
          '10 swings without a ball, 5 with',
          'Make the backswing slowly.',
          'Start the lead hip round before the hands have stopped.',
        ),
        drill(
          'Feet together, step early',
          '8 balls at half speed',
          'Start with the feet together.',
          'Step while the club is still going back, then swing.',
        ),
      ],
      BACK_CARE,
      HIP_CARE,
    ),
  },
  trailSideBend: {
    more: practice(
      'Feel the trail shoulder go under the chin and the ear stay behind the ball.',
      [
        drill(
          'Shoulder under',
          '10 slow rehearsals, 5 balls, twice',
          'Lean a spare club from the lead hip up the breastbone.',
          'From the top, tip its upper end away from the target.',
        ),
        drill(
          'Hand down the leg',
          '12 times without a club',
          'Take the posture, trail hand on the trail thigh.',
          'Start down and let that hand slide toward the knee.',
        ),
      ],
      BACK_CARE,
    ),
    less: practice('Feel the breastbone stay on top of the ball and the shoulders turn level.', [
      drill(
        'Chest over the ball',
        '10 slow rehearsals, 5 balls, twice',
        'Let a buttoned shirt, or a spare club, hang over the ball.',
        'Start down and keep it there until the arm is parallel.',
      ),
      drill(
        'Level shoulders',
        '12 turns without a club',
        'Hold a club across the shoulders.',
        'Turn down from the top without dipping its trail end.',
      ),
    ]),
  },
  pelvisShift: {
    more: practice(
      'Feel the lead hip push into a wall on the target side.',
      [
        drill(
          'Hip to the wall',
          '10 slow rehearsals, 5 balls, twice',
          'Stand a hand\u2019s width from a bag on the target side.',
          'From the top, touch it with the lead hip, then turn.',
        ),
        drill(
          'Step toward the target',
          '8 balls at half speed',
          'Lift the lead foot in the backswing.',
          'Put it down again, a little nearer the target, then swing.',
        ),
      ],
      HIP_CARE,
    ),
    less: practice('Feel the belt buckle stay over the trail foot while the arms come down.', [
      drill(
        'Bag beside the hip',
        '10 slow rehearsals, 5 balls, twice',
        'Stand so that the lead hip just clears a bag.',
        'Start down and turn without touching it.',
      ),
      drill(
        'Lead foot back',
        '8 balls at half speed',
        'Draw the lead foot back by half its length.',
        'Turn in place: the weight may come later.',
      ),
    ]),
  },
};

/** Smaller changes than a tenth of a dial's step need no practice. */
const isChange = (id: MovementId, change: number): boolean => Math.abs(change) > dialOf(id).step / 10;

/** How to practise a change of one movement: new less old, model units. Nothing to practise when there is none. A rule of thumb. */
export const findPractice = (id: MovementId, change: number): Practice | undefined =>
  isChange(id, change) ? PRACTICE[id][change > 0 ? 'more' : 'less'] : undefined;

/** "Bow the lead wrist 12° more." What is to change: new less old, model units. At most 15 words; nothing when nothing changes. */
export function sayChange(id: MovementId, change: number, units: Pick<Units, 'length'>): string | undefined {
  if (!isChange(id, change)) return undefined;
  const edge = Math.abs(change) / dialOf(id).edgeUnit;
  const up = change > 0;
  switch (id) {
    case 'leadWristFlexion':
      return `${up ? 'Bow' : 'Cup'} the lead wrist ${formatTyped(Math.round(edge))}° more by lead arm parallel.`;
    case 'rotationRate':
      return `Turn pelvis and chest ${formatTyped(Math.round(edge * 100))} % ${up ? 'more' : 'less'} in the downswing.`;
    case 'rotationDelay':
      return `Start the turn ${formatTyped(Math.round(edge))} ms ${up ? 'later' : 'earlier'}.`;
    case 'trailSideBend':
      return `Bend the upper body ${formatTyped(Math.round(edge))}° more ${up ? 'to the trail side' : 'toward the target'}.`;
    case 'pelvisShift':
      return `Slide the hips ${showLength(Math.abs(change), units).inSentence} ${up ? 'farther' : 'less'} toward the target.`;
  }
}

/** The usual cautions with those of what is practised, each once. */
export function findCautions(practices: readonly Practice[]): readonly string[] {
  return [...new Set([...practices.flatMap(({ cautions }) => cautions), ...CAUTIONS])];
}

import { renderToStaticMarkup } from 'react-dom/server';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { AT } from '../../src/model/chain';
import { StickFigure } from '../../src/stage/StickFigure';
import { currentPose, desk, holdAt, setPlayer } from '../../src/store';
import { clearDesk } from '../../src/store/desk/desk';
import { startEffects } from '../../src/store/effects/startEffects';

startEffects();
beforeEach(() => clearDesk());
afterEach(() => vi.restoreAllMocks());

type Place = readonly [number, number];
interface View {
  readonly limbs: readonly (readonly Place[])[];
  readonly club: readonly Place[];
}

/** Both views as they are drawn: down the line, then face on; x to the right, y up, m. */
function views(handed: 'right' | 'left'): readonly View[] {
  setPlayer({ statureM: 1.78, handed });
  // Written to a text, React reads what a store began with.
  vi.spyOn(desk, 'getInitialState').mockReturnValue(desk.getState());
  const markup = renderToStaticMarkup(<StickFigure note="No picture." />);
  const read = (drawing: string, name: string): Place[][] =>
    [...drawing.matchAll(/<path d="M ([^"]*)" class="([^"]*)"/g)]
      .filter(([, , className]) => className === name)
      .map(([, d]) =>
        d
          .split(' L ')
          .map((p) => p.split(' ').map(Number))
          .map(([x, y]): Place => [x, -y]),
      );
  return markup
    .split('<figure>')
    .slice(1)
    .map((drawing) => ({ limbs: read(drawing, 'stage-stick'), club: read(drawing, 'stage-stick-club')[0] }));
}

test('the stick figure holds its club: from the grip to the head, in both views', () => {
  holdAt('P5');
  const [downTheLine, faceOn] = views('right');
  const pose = currentPose();
  const [x, y, z] = [0, 1, 2].map((i) => pose[AT.head + i]);
  for (const { limbs, club } of [downTheLine, faceOn]) {
    expect(limbs.length).toBe(7);
    expect(Math.hypot(club[1][0] - club[0][0], club[1][1] - club[0][1])).toBeGreaterThan(0.1);
  }
  // Down the line the ball lies to the right, face on the target.
  expect(downTheLine.club[1]).toEqual([expect.closeTo(z, 3), expect.closeTo(y, 3)]);
  expect(faceOn.club[1]).toEqual([expect.closeTo(x, 3), expect.closeTo(y, 3)]);
});

test('a left-handed stick figure is the mirror image in both views', () => {
  holdAt('P6');
  const [right, left] = [views('right'), views('left')];
  const flip = (line: readonly Place[]) => line.map(([x, y]) => [expect.closeTo(-x, 6) as number, y]);
  right.forEach(({ limbs, club }, i) => {
    expect(left[i].club).toEqual(flip(club));
    expect(left[i].limbs).toEqual(limbs.map(flip));
    expect(Math.max(...club.map(([x]) => Math.abs(x)))).toBeGreaterThan(0.1);
  });
});

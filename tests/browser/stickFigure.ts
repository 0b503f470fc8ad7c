import type { Page } from 'playwright-core';
import { AT } from '../../src/model/pose';
import type { DeskLook } from '../../src/store/desk/probe';

/** The stick figure in one of its two pictures. */
interface Sticks {
  readonly view: string;
  /** None in a picture without head, ball or size. */
  readonly limbs: number;
  /** Limbs that end where the club begins. */
  readonly hands: number;
  /** Where the club's head is on the picture, cm. */
  readonly clubHead: readonly number[];
}

/** The stick figure as it is drawn and named. */
export const readSticks = (page: Page): Promise<Sticks[]> =>
  page.locator('.stage-sticks figure').evaluateAll((figures) =>
    figures.map((figure) => {
      const points = (path: Element): number[][] =>
        [...path.getAttribute('d')!.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [
          Math.round(Number(x) * 100) + 0,
          Math.round(Number(y) * 100) + 0,
        ]);
      const limbs = [...figure.querySelectorAll('path.stage-stick')].map(points);
      const [butt, clubHead] = points(figure.querySelector('path.stage-stick-club')!);
      const { width, height } = figure.querySelector('svg')!.getBoundingClientRect();
      const isWhole = figure.querySelectorAll('circle').length === 2 && width > 50 && height > 50;
      return {
        view: figure.querySelector('figcaption')!.textContent,
        limbs: isWhole ? limbs.length : 0,
        hands: limbs.filter((limb) => Math.hypot(...limb.at(-1)!.map((at, i) => at - butt[i])) < 20).length,
        clubHead,
      };
    }),
  );

/** What has to be drawn for the pose on the desk: the mirror image for a left-handed player. */
export function sticksOf({ pose, document }: DeskLook): Sticks[] {
  const mirror = document.player.handed === 'left' ? -1 : 1;
  const cm = (metres: number): number => Math.round(Number(metres.toFixed(3)) * 100) + 0;
  const seenAlong = (view: string, across: number): Sticks => ({
    view,
    limbs: 7,
    hands: 2,
    clubHead: [cm(mirror * pose[AT.head + across]), cm(-pose[AT.head + 1])],
  });
  return [seenAlong('down the line', 2), seenAlong('face on', 0)];
}

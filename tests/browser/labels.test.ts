import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Body } from '../../src/model/body';
import { AT, createPose, type Pose } from '../../src/model/pose';
import { isReached } from '../../src/reading/checkpoints';
import { headAt, swingPose } from '../../src/reading/swing';
import { current, desk } from '../../src/store';
import { DRAW_NOTHING, drawn, look, openDrawer, showSection, slider } from './deskPage';
import { findEye, NOTE_EYE } from './cameraProbe';
import { shareDesk } from './sharedDesk';

// What has to stand beside the numbers, and what the desk says of itself.
const shared = shareDesk({ reducedMotion: 'reduce', init: [DRAW_NOTHING, NOTE_EYE] });
let page: Page;
beforeAll(() => ({ page } = shared));

const TITLES = ['Lead arm parallel', 'Shaft parallel'] as const;
const plate = (title: string) =>
  page.getByRole('article').filter({ has: page.getByRole('button', { name: title, exact: true }) });
const readout = () => page.locator('.path-readout');
const status = () => page.locator('.status');
const picture = () => page.getByRole('img', { name: /^A wooden figure/ });
const exaggerate = () => page.locator('.stage').getByRole('switch', { name: 'Exaggerate' });

async function dial(id: string, value: number): Promise<void> {
  await slider(page, id).fill(String(value));
  await drawn(page);
}

/** Types a number into a field of the set-up. */
async function type(label: string, text: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).fill(text);
  await page.getByLabel(label, { exact: true }).press('Enter');
}

/** The desk worked out by the engine at hand, from the document alone. */
async function ours(): Promise<ReturnType<typeof current>> {
  const { document, session } = await look(page);
  desk.setState({ document, session, gesture: null });
  return current();
}

/** Whole degrees and one of three words, as it has to read. The angle in degrees. */
const inWords = (angle: number, positive: string, negative: string, zero: string): string => {
  const whole = Math.round(Math.abs(angle));
  return `${whole}° ${whole === 0 ? zero : angle > 0 ? positive : negative}`;
};
/** Direction of a vector along the ground, degrees from the target line (+X), positive to the golfer's far side (+Z). */
const heading = (x: number, z: number): number => (Math.atan2(z, x) * 180) / Math.PI;

/** Shoulder to grip less upper arm, forearm and hand, cm: how much the straight trail arm is short. */
const shortOf = (pose: Pose, { upperArm, forearm, grip }: Body): number => {
  const way = [0, 1, 2].map((i) => pose[AT.trailGrip + i] - pose[AT.trailShoulder + i]);
  return (Math.hypot(...way) - upperArm - forearm - grip) * 100;
};

describe('beside the numbers', () => {
  test('both plates and the path say that the model computed them; path and face are two readings of this swing', async () => {
    for (const [id, value] of [
      ['leadWristFlexion', -20],
      ['rotationRate', 1.2],
    ] as const)
      await dial(id, value);
    const { delivery, swing } = await ours();
    if ('missing' in delivery) throw new Error('the swing has no delivery');
    // The path is the slope of the head's way over the last and the next tenth of a millisecond, the face where its normal points.
    const [before, after, pose] = [new Float64Array(3), new Float64Array(3), createPose()];
    headAt(swing, delivery.t - 1e-4, before);
    headAt(swing, delivery.t + 1e-4, after);
    swingPose(swing, delivery.t, pose);
    const pathDeg = heading(after[0] - before[0], after[2] - before[2]);
    const faceDeg = heading(pose[AT.faceNormal], pose[AT.faceNormal + 2]);
    const path = inWords(pathDeg, 'in-to-out', 'out-to-in', 'straight');
    // The drawn face, as the geometry has it, leads its band.
    const face = inWords(faceDeg, 'open', 'closed', 'square');
    expect(path).toMatch(/[1-9]\d*° (in-to-out|out-to-in)$/);
    expect(Math.round(faceDeg)).not.toBe(Math.round(pathDeg));
    const shown = (await readout().innerText()).replace(/\s+/g, ' ');
    // Behind the drawn face stands its band.
    expect(shown).toMatch(new RegExp(`Path ${path} Face ${face}[, (]`));
    expect(shown).toContain('computed by the model');
    for (const title of TITLES) expect(await plate(title).innerText(), title).toContain('computed by the model');
  });

  test('while the deviation is doubled every place with a number says so, and none once it is not', async () => {
    await dial('leadWristFlexion', -10);
    const places = () => [...TITLES.map(plate), readout(), status(), picture()];
    const slip = page.getByText('exaggerated twofold', { exact: true });
    const saying = (): Promise<boolean[]> =>
      Promise.all(
        places().map(async (place) => {
          const said = `${await place.innerText()} ${(await place.getAttribute('aria-label')) ?? ''}`;
          return said.toLowerCase().includes('exaggerated twofold');
        }),
      );
    const before = await look(page);
    expect(await saying()).toEqual(places().map(() => false));
    await exaggerate().click();
    await drawn(page);
    const doubled = await look(page);
    expect(doubled.document).toEqual(before.document);
    expect(doubled.movements.leadWristFlexion).toBeCloseTo(2 * before.movements.leadWristFlexion, 9);
    expect(await saying()).toEqual(places().map(() => true));
    expect(await slip.isVisible()).toBe(true);
    await exaggerate().click();
    await drawn(page);
    expect(await saying()).toEqual(places().map(() => false));
    expect(await slip.count()).toBe(0);
  });

  test('a trail arm that is too short for the grip is said on the plate where it is', async () => {
    await openDrawer(page, 'setUp/Top and tempo');
    await type('Hand depth', '-12');
    await type('Hand height', '-6');
    await type('Turn', '20');
    await type('Wrist set', '-20');
    await showSection(page, 'Bands');
    await page.getByRole('slider', { name: 'Lead arm is read' }).fill('-20');
    const short = /Trail arm .* short of the grip here\./;
    for (const title of TITLES) expect(await plate(title).innerText(), title).not.toMatch(short);
    await dial('rotationDelay', -40);
    const { checkpoints, body } = await ours();
    const { leadArmParallel, shaftParallel } = checkpoints;
    if (!isReached(leadArmParallel) || !isReached(shaftParallel)) throw new Error('a checkpoint is not reached');
    const cm = shortOf(leadArmParallel.pose, body);
    expect(cm).toBeGreaterThan(1);
    expect(shortOf(shaftParallel.pose, body)).toBeLessThan(1);
    expect(await plate(TITLES[0]).innerText()).toContain(`Trail arm ${Math.round(cm)} cm short of the grip here.`);
    expect(await plate(TITLES[1]).innerText()).not.toMatch(short);
  });

  test('a dial past its usual range says so beside it, aloud and on the stage; at the reference nothing does', async () => {
    const wrist = slider(page, 'leadWristFlexion');
    const past = /past (the )?usual range/i;
    const said = async (): Promise<boolean[]> => [
      // The value hangs on hatch; the words are for whoever hears them.
      (await page.locator('[data-dial="leadWristFlexion"] .dial-past').count()) > 0,
      past.test((await wrist.getAttribute('aria-valuetext'))!),
      past.test(await page.locator('.slips').innerText()),
    ];
    expect(await said()).toEqual([false, false, false]);
    await wrist.press('Home');
    await drawn(page);
    expect(await said()).toEqual([true, true, true]);
    expect(await page.locator('.slips').innerText()).toMatch(/Lead wrist: past .* cupped 30°/);
    await wrist.fill('-30');
    await drawn(page);
    expect(await said()).toEqual([false, false, false]);
  });
});

test('what came of a change is read out once it has come to rest: both verdicts, as the plates say them', async () => {
  const region = page.locator('[aria-live="polite"]:not(footer *)');
  // What the test before left is taken back, and that too is read out once it has come to rest.
  await expect.poll(() => region.innerText()).not.toMatch(/Steep/);
  await slider(page, 'leadWristFlexion').focus();
  for (const key of ['PageDown', 'PageDown', 'PageDown']) await page.keyboard.press(key);
  await expect.poll(() => region.innerText()).toMatch(/Steep/);
  const labels = await Promise.all(TITLES.map((title) => plate(title).getByRole('img').getAttribute('aria-label')));
  expect(await region.innerText()).toBe(labels.map((label) => label!.split('down the line. ')[1]).join(' '));
  expect(await region.innerText()).toMatch(/^Steep: .* lead arm parallel\. Steep: .* shaft parallel\.$/);
});

/** Of both plates, how far right of its middle the ring and the middle of the figure stand, px. */
const rightOfMiddle = (): Promise<number[]> =>
  page.getByRole('article').evaluateAll((plates) =>
    plates.flatMap((one) => {
      const middleOf = (parts: Iterable<Element>): number => {
        const boxes = Array.from(parts, (part) => part.getBoundingClientRect());
        return (Math.min(...boxes.map(({ left }) => left)) + Math.max(...boxes.map(({ right }) => right))) / 2;
      };
      const middle = middleOf(one.querySelectorAll('svg[role="img"]'));
      const [ring, figure] = ['[role="slider"]', 'svg[role="img"] .plate-part'];
      return [ring, figure].map((parts) => middleOf(one.querySelectorAll(parts)) - middle);
    }),
  );

test('a left-handed player is named so, and plates and picture are the mirror image until he is right-handed again', async () => {
  await dial('leadWristFlexion', -6);
  await page.getByRole('button', { name: 'Face on', exact: true }).click();
  const choose = async (hand: string): Promise<void> => {
    await openDrawer(page, 'setUp/Player');
    await page.getByRole('radio', { name: hand }).check({ force: true });
    await page.locator('#tab-setUp').click();
    await drawn(page);
  };
  const named = async (): Promise<(string | undefined)[]> =>
    [(await picture().getAttribute('aria-label'))!, await status().innerText()].map(
      (text) => /(left|right)-handed/.exec(text)?.[1],
    );
  const right = {
    at: await rightOfMiddle(),
    plates: await Promise.all(TITLES.map((title) => plate(title).innerText())),
  };
  expect(await named()).toEqual(['right', undefined]);
  expect((await findEye(page)).back[2]).toBeGreaterThan(0.99);
  for (const at of right.at) expect(Math.abs(at)).toBeGreaterThan(4);

  await choose('Left-handed');
  expect((await look(page)).document.player.handed).toBe('left');
  expect(await named()).toEqual(['left', 'left']);
  (await rightOfMiddle()).forEach((at, i) => expect(Math.abs(at + right.at[i]), `${i}`).toBeLessThan(2));
  expect((await findEye(page)).back[2]).toBeLessThan(-0.99);
  // Who swings with the other hand swings the same.
  expect(await Promise.all(TITLES.map((title) => plate(title).innerText()))).toEqual(right.plates);

  await choose('Right-handed');
  expect(await named()).toEqual(['right', undefined]);
  expect(await rightOfMiddle()).toEqual(right.at);
  expect((await findEye(page)).back[2]).toBeGreaterThan(0.99);
});

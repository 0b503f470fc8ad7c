import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { K } from '../../src/model/keys';
import { AT, createPose } from '../../src/model/pose';
import { standCamera, type Address, type CameraView } from '../../src/reading/camera/camera';
import { CHECKPOINTS } from '../../src/reading/checkpointTable';
import { readThrough, type CameraReadingId } from '../../src/reading/camera/cameraReadings';
import { isReached, readCheckpoints, type CheckpointId } from '../../src/reading/checkpoints';
import { swingPose } from '../../src/reading/swing';
import { DEFAULT_BANDS } from '../../src/reading/verdicts';
import { toTripod, USUAL_CAMERAS, type CameraPlace } from '../../src/store/document/cameras';
import { CHECKPOINT_NAMES, nameFaceOn, sayBend, sayCheckpoint, sayFaceOn, sayTurn } from '../../src/words';
import { dialled, playerWith, referenceSwing } from '../reference/solvingPlayers';
import { DRAW_NOTHING, drawn, look, openDesk, openDrawer, plateWords, ready, slider } from './deskPage';
import { startOver } from './startOver';
import { launch, offOrigin, type Visit } from './support';

const WRIST_DEG = -10;
const UNITS = { length: 'cm' } as const;
const BOTH: readonly CheckpointId[] = ['leadArmParallel', 'shaftParallel'];

let browser: Browser | undefined;
let visit: Visit;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  visit = await openDesk(browser, { init: [DRAW_NOTHING] });
  ({ page } = visit);
});
beforeEach(async () => {
  await startOver(page);
  await slider(page, 'leadWristFlexion').fill(String(WRIST_DEG));
  await openDrawer(page, 'setUp/Camera');
  await showPlace();
});
afterEach(() => {
  expect(visit.witness.errors).toEqual([]);
  expect(offOrigin(visit.witness)).toEqual([]);
});
afterAll(() => browser?.close());

const section = () => page.getByRole('region', { name: 'Camera' });
const aside = () => section().getByLabel('Camera position');
const lead = (): Promise<string> => section().locator('.camera-lead span').first().innerText();
/** The table as it is seen: name, what it is, what the camera reads, by how much that is bent. */
const rows = (): Promise<string[][]> =>
  section()
    .locator('tbody tr')
    .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent)));
const undoOnce = (): Promise<void> => page.getByRole('button', { name: 'Undo: Camera' }).click();

/** Opens the fields of the camera's place. */
const showPlace = (): Promise<void> => section().getByText('Its place in numbers').click();

/** Types a number into a field of the section. */
async function type(label: string, text: string): Promise<void> {
  await section().getByLabel(label).fill(text);
  await section().getByLabel(label).press('Enter');
  await drawn(page);
}

/** Hands and ball at address of the player on the desk: by them a coach sets his tripod up. */
function addressOf(): Address {
  const swing = referenceSwing();
  const pose = createPose();
  swingPose(swing, swing.curves.times[K.address], pose);
  const at = AT.leadGrip;
  return { hands: [pose[at], pose[at + 1], pose[at + 2]], ball: swing.reference.ballPoint };
}

/** A reading of the dialled swing through a camera, by the model alone. */
function through(view: CameraView, place: CameraPlace, id: CameraReadingId, at: CheckpointId) {
  const checkpoint = readCheckpoints(playerWith(dialled({ wristDeg: WRIST_DEG })))[at];
  if (!isReached(checkpoint)) throw new Error(`${at} is not reached`);
  const lens = standCamera(view, toTripod(place, { statureM: 1.78, handed: 'right' }), addressOf());
  const read = readThrough(id, lens, checkpoint.pose);
  if (!('bend' in read)) throw new Error(`${id} is not seen`);
  return { checkpoint, ...read };
}

/** The rows that belong to a camera down the line. */
const lineRows = (part: Partial<CameraPlace>): string[][] =>
  BOTH.map((at) => {
    const id = CHECKPOINTS[at].judged;
    const place = { ...USUAL_CAMERAS.downTheLine, ...part };
    const { checkpoint, seen, bend } = through('downTheLine', place, id, at);
    // How steep the shaft looks decides whether a gap is called above or in front.
    const { seen: shaftPlane } = through('downTheLine', place, 'shaftPlane', at);
    const asSeen = { ...checkpoint, readings: { ...checkpoint.readings, shaftPlane, [id]: seen } };
    const [own, read] = [checkpoint, asSeen].map((each) => sayCheckpoint(at, each, DEFAULT_BANDS, UNITS).shortWhy);
    return [CHECKPOINT_NAMES[at].title, own, read, sayBend(bend, UNITS)];
  });

/** The rows that belong to a camera face on. */
const frontRows = (part: Partial<CameraPlace>): string[][] =>
  BOTH.flatMap((at) =>
    ([at === 'leadArmParallel' ? 'armAngle' : 'shaftAngle', 'trunkLean'] as const).map((id) => {
      const { seen, bend } = through('faceOn', { ...USUAL_CAMERAS.faceOn, ...part }, id, at);
      return [nameFaceOn(id, at), sayFaceOn(id, seen - bend), sayFaceOn(id, seen), sayTurn(id, bend)];
    }),
  );

describe('a camera down the line', () => {
  test('dragged aside, it says what it bends; the readings are those of the model, and the drag is one undo step', async () => {
    const before = { look: await look(page), plates: await plateWords(page), lead: await lead() };
    expect(await rows()).toEqual(lineRows({}));
    await aside().scrollIntoViewIfNeeded();
    const box = (await aside().boundingBox())!;
    // The thumb runs from 18 px to 18 px before the end.
    const pointAt = (share: number): number => box.x + 18 + share * (box.width - 36);
    await page.mouse.move(pointAt(0.5), box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(pointAt(0.6), box.y + box.height / 2, { steps: 5 });
    await page.mouse.move(pointAt(0.65), box.y + box.height / 2, { steps: 5 });
    await page.mouse.up();
    await drawn(page);
    const after = await look(page);
    const { rightCm } = after.document.camera.downTheLine;
    expect(rightCm).toBeGreaterThan(50);
    expect(rightCm).toBeLessThan(70);
    expect(await aside().getAttribute('aria-valuetext')).toBe(`${rightCm} cm right`);
    expect(await rows()).toEqual(lineRows({ rightCm }));
    expect(await lead()).toMatch(
      new RegExp(
        `^Standing ${rightCm} cm right of the line, it reads \\d+ cm shallower at (lead arm|shaft) parallel\\.$`,
      ),
    );
    // The swing is what it was: only what would be read off the picture differs.
    expect([after.bicepGapCm, after.headDepthCm]).toEqual([before.look.bicepGapCm, before.look.headDepthCm]);
    expect(await plateWords(page)).toEqual(before.plates);
    expect(after.past).toEqual([...before.look.past, 'Camera']);
    await undoOnce();
    await drawn(page);
    expect(await lead()).toBe(before.lead);
    expect(await rows()).toEqual(lineRows({}));
    expect((await look(page)).document).toEqual(before.look.document);
  });

  test.each<[string, string, Partial<CameraPlace>, RegExp]>([
    ['Camera height', '2.2', { heightM: 2.2 }, /^Standing 2\.2 m high, it reads /],
    ['Behind the hands', '2,5', { distanceM: 2.5 }, /^From 2\.5 m away, it reads /],
    ['Right of the hand line', '−60', { rightCm: -60 }, /^Standing 60 cm left of the line, it reads /],
    // Most of what is bent, and at P6, is still because it stands so near.
    ['Tilted clockwise', '−20', { clockwiseDeg: -20 }, /^From 4 m away, it reads \d cm steeper at shaft parallel\.$/],
  ])('%s typed as %s: sentence and readings follow', async (label, typed, part, sentence) => {
    await type(label, typed);
    expect((await look(page)).document.camera.downTheLine).toEqual({ ...USUAL_CAMERAS.downTheLine, ...part });
    expect(await rows()).toEqual(lineRows(part));
    expect(await lead()).toMatch(sentence);
  });

  test('a place no camera can have is refused beside the field, and what was typed stays', async () => {
    const before = await look(page);
    await type('Behind the hands', '0.4');
    expect(await section().getByRole('alert').innerText()).toMatch(/Behind the hands .*1 to 20 m/);
    expect(await section().getByLabel('Behind the hands').inputValue()).toBe('0.4');
    expect((await look(page)).document).toEqual(before.document);
  });

  test('"Move it there" takes it where it reads this swing true; "Back to the usual place" and undo bring it back', async () => {
    await type('Right of the hand line', '60');
    const bent = await rows();
    await section().getByRole('button', { name: 'Move it there' }).click();
    await drawn(page);
    const { downTheLine } = (await look(page)).document.camera;
    expect(await lead()).toBe('Your camera reads this swing true to 1 cm.');
    for (const at of BOTH)
      expect(Math.abs(through('downTheLine', downTheLine, CHECKPOINTS[at].judged, at).bend)).toBeLessThan(0.01);
    expect(await section().getByRole('button', { name: 'Move it there' }).count()).toBe(0);
    await section().getByRole('button', { name: 'Back to the usual place' }).click();
    await drawn(page);
    expect((await look(page)).document.camera).toEqual(USUAL_CAMERAS);
    expect(await rows()).toEqual(lineRows({}));
    expect(await section().getByRole('button', { name: 'Back to the usual place' }).count()).toBe(0);
    for (let i = 0; i < 2; i++) await undoOnce();
    await drawn(page);
    expect(await rows()).toEqual(bent);
  });

  test('a mark counts without what the camera does to it, and the number that was seen stands beside; of a camera nobody placed nothing is said', async () => {
    const marks = page.locator('#mark-shaftParallel');
    const mark = async (): Promise<string> => {
      await openDrawer(page, 'seen');
      await marks.getByLabel('Seen').fill('5');
      await marks.getByLabel('Seen').press('Enter');
      await drawn(page);
      return marks.innerText();
    };
    expect(await mark()).not.toContain('Without your camera');
    await openDrawer(page, 'setUp');
    await showPlace();
    await type('Right of the hand line', '60');
    const { bend } = through(
      'downTheLine',
      { ...USUAL_CAMERAS.downTheLine, rightCm: 60 },
      'headDepth',
      'shaftParallel',
    );
    expect(Math.abs(bend)).toBeGreaterThan(0.02);
    const said = await mark();
    const [, seen, honest] =
      /You saw (\d+) cm in front\. Without your camera: (\d+) cm (?:in front|behind) ± \d+ cm\./.exec(said)!;
    expect(seen).toBe('5');
    // The camera makes it look farther in front or behind; what counts lies on the other side of what was seen.
    const signed = Number(honest) * (said.includes(`${honest} cm behind ±`) ? -1 : 1);
    expect(Math.sign(5 - signed)).toBe(Math.sign(bend));
  });

  test('it stands where it stood after a reload, and can still be undone', async () => {
    await type('Right of the hand line', '40');
    await type('Camera height', '1.5');
    const before = { camera: (await look(page)).document.camera, lead: await lead(), rows: await rows() };
    expect(before.rows).toEqual(lineRows({ rightCm: 40, heightM: 1.5 }));
    await page.reload();
    await ready(page);
    await openDrawer(page, 'setUp/Camera');
    await showPlace();
    expect((await look(page)).document.camera).toEqual(before.camera);
    expect({ lead: await lead(), rows: await rows() }).toEqual({ lead: before.lead, rows: before.rows });
    expect(await section().getByLabel('Camera height').inputValue()).toBe('1.5');
    await undoOnce();
    await drawn(page);
    expect(await rows()).toEqual(lineRows({ rightCm: 40 }));
  });
});

describe('a camera face on', () => {
  test('has a place, a sentence and readings of its own', async () => {
    await type('Right of the hand line', '40');
    const line = await rows();
    await section()
      .getByRole('radio', { name: 'Face on' })
      .evaluate((radio: HTMLInputElement) => radio.click());
    await drawn(page);
    expect(await rows()).toEqual(frontRows({}));
    const before = await lead();
    await type('Right of the stance', '120');
    expect((await look(page)).document.camera).toEqual({
      downTheLine: { ...USUAL_CAMERAS.downTheLine, rightCm: 40 },
      faceOn: { ...USUAL_CAMERAS.faceOn, rightCm: 120 },
    });
    expect(await rows()).toEqual(frontRows({ rightCm: 120 }));
    expect(await lead()).toMatch(/^Standing 120 cm right of centre, it reads the /);
    expect(await lead()).not.toBe(before);
    await section().getByRole('radio', { name: 'Down the line' }).check({ force: true });
    await drawn(page);
    expect(await rows()).toEqual(line);
  });
});

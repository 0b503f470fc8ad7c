import { Vector3, type PerspectiveCamera, type Vector2 } from 'three';
import { MATRIX_SIZE, PART } from '../figure/partIds';
import { placeOnTrace } from '../scene/lines/trace';
import type { SceneFrame } from '../scene/sceneFrame';
import type { Insets } from '../scene/camera/view';
import { desk } from '../store';
import { sayComparison } from '../words/swing/comparison';
import { pinsOnScreen } from './pins/pinOnScreen';

const BODY = (
  [
    'headEgg',
    'shoulderLead',
    'shoulderTrail',
    'elbowLead',
    'elbowTrail',
    'fistLead',
    'fistTrail',
    'hipLead',
    'hipTrail',
    'kneeLead',
    'kneeTrail',
    'ankleLead',
    'ankleTrail',
  ] as const
).map((id) => PART[id] * MATRIX_SIZE + 9);
const [BUTT, HEAD] = [PART.grip * MATRIX_SIZE + 9, PART.clubHead * MATRIX_SIZE + 9];
/** From one place on the head's trace to the next that words keep clear of, numbers; and along the club, shares of it. */
const TRACE_STEP = 5 * 3;
const CLUB_STEP = 0.2;
/** Of a place beside the words: how far it may lie up and down its side, shares of a leader. */
const DROPS = [0.35, -0.35, 0.8];
const LEGENDS = ['reference', 'ghost', 'flight'] as const;
type LegendId = (typeof LEGENDS)[number];
/** Length of a leader, px, and room round the body. */
const LEADER = 30;
const ROOM = 14;
/** Round the middle of a pin, with its arrowheads, px. */
const PIN_ROOM = 26;
/** What the strip in the upper left corner takes: px past the picture's inset, px down. */
const PINNED = { right: 136, bottom: 136 };

interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}
const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

interface Caption {
  readonly label: HTMLElement;
  readonly leader: SVGPathElement;
  readonly anchor: (scene: SceneFrame) => ArrayLike<number>;
  /** Size of the words, px. */
  width: number;
  height: number;
  readonly written: Written;
}

/** What stands in the page. */
type Written = Record<'visibility' | 'at' | 'd', string>;

/** Writes what is not there yet: most frames move no caption by a pixel. */
function write({ label, leader, written }: Caption, what: keyof Written, value: string): void {
  if (written[what] === value) return;
  written[what] = value;
  if (what === 'visibility') label.style.visibility = leader.style.visibility = value;
  else if (what === 'at') label.style.transform = value;
  else leader.setAttribute(what, value);
}

/** Where the legends stand, and the sizes of the captions. */
interface Measured {
  readonly legends: Box[];
  readonly sizes: readonly { readonly width: number; readonly height: number }[];
}
/** Sizes of the picture that are remembered; a window being resized goes through many. */
const MOST_KNOWN = 16;

/** Words over the picture in css px, tied to places in the scene. A caption without room hides. */
export class Captions {
  private readonly captions: Caption[];
  private readonly legends: Record<LegendId, HTMLElement>;
  /** Where the legends in sight stand. */
  private legendBoxes: Box[] = [];
  /** What the sizes above were measured for: asking the page for them in every frame would lay it out in every frame. */
  private measuredFor = '';
  private readonly known = new Map<string, Measured>();
  /** How often typefaces arrived: what was measured before had other widths. */
  private fontsLoaded = 0;
  private readonly off = new AbortController();
  private readonly p = new Vector3();
  private readonly onTrace = new Float64Array(3);
  /** Where the slips stand that the panels pin on the stage, and how high their pile is, px. */
  private slipBoxes: Box[] = [];
  private slipsHeight = 0;
  private observer: ResizeObserver | undefined;
  private placed: Parameters<Captions['place']> | undefined;

  constructor(private readonly root: HTMLElement) {
    const find = <E extends Element>(id: string): E => root.querySelector<E>(`[data-caption="${id}"]`)!;
    const caption = (id: string, anchor: Caption['anchor']): Caption => {
      const written: Written = { visibility: '', at: '', d: '' };
      return { label: find(id), leader: find(`${id}Leader`), anchor, width: 0, height: 0, written };
    };
    this.captions = [
      caption('trace', (scene) => placeOnTrace(scene.headTrace, 0.38, this.onTrace)),
      caption('glass', (scene) => scene.glassEdge),
    ];
    this.legends = { reference: find('reference'), ghost: find('ghost'), flight: find('flight') };
    const { signal } = this.off;
    document.fonts.addEventListener('loadingdone', () => this.fontsLoaded++, { signal });
    this.watchSlips();
  }

  /** A slip comes and goes without a frame being drawn for it; its size is asked for only then. */
  private watchSlips(): void {
    const slips = this.root.closest('.stage-place')?.querySelector('.slips');
    if (!slips) return;
    this.observer = new ResizeObserver(([{ contentRect }]) => {
      if (contentRect.height === this.slipsHeight) return;
      this.slipsHeight = contentRect.height;
      this.slipBoxes = this.boxesOf(slips.children);
      if (this.placed) this.place(...this.placed);
    });
    this.observer.observe(slips);
  }

  dispose(): void {
    this.off.abort();
    this.observer?.disconnect();
  }

  place(camera: PerspectiveCamera, scene: SceneFrame, insets: Insets): void {
    this.placed = [camera, scene, insets];
    const { size, mirror } = scene;
    camera.updateMatrixWorld();
    const body = this.bodyBox(camera, scene, size, mirror);
    // The panels pin path, face and shot here.
    const pinned = { left: 0, top: 0, right: insets.left + PINNED.right, bottom: PINNED.bottom };
    this.measure(scene, size);
    const taken: Box[] = [body, pinned, ...this.legendBoxes, ...this.slipBoxes];
    for (const { x, y } of pinsOnScreen(scene, camera))
      taken.push({ left: x - PIN_ROOM, top: y - PIN_ROOM, right: x + PIN_ROOM, bottom: y + PIN_ROOM });
    const isCramped = size.x < 420 || size.y < 300;
    if (!isCramped) this.pushLines(taken, camera, scene, size, mirror);
    for (const caption of this.captions) {
      const box = isCramped ? undefined : this.findRoom(caption, camera, scene, size, mirror, insets, taken);
      write(caption, 'visibility', box ? 'inherit' : 'hidden');
      if (box) taken.push(box);
    }
  }

  /** Shows the legends that belong to the scene, and measures the words where they have not been measured like this before. */
  private measure({ legends: shown }: SceneFrame, size: Vector2): void {
    const ghost = shown.ghost ? sayComparison(shown.ghostGap, desk.getState().document.units) : '';
    const key = `${size.x} ${size.y} ${shown.reference} ${shown.flight} ${ghost} ${this.fontsLoaded}`;
    if (key === this.measuredFor) return;
    this.measuredFor = key;
    for (const id of LEGENDS) this.legends[id].hidden = !shown[id];
    this.legends.ghost.textContent = ghost;
    let measured = this.known.get(key);
    if (!measured) {
      if (this.known.size >= MOST_KNOWN) this.known.clear();
      this.known.set(key, (measured = this.read()));
    }
    this.legendBoxes = measured.legends;
    this.captions.forEach((caption, i) => Object.assign(caption, measured.sizes[i]));
  }

  private read(): Measured {
    const legends = this.boxesOf(Object.values(this.legends));
    const sizes = this.captions.map(({ label }) => ({ width: label.offsetWidth, height: label.offsetHeight }));
    return { legends, sizes };
  }

  /** Where elements stand in the picture; nowhere in it those that are hidden. */
  private boxesOf(elements: Iterable<Element>): Box[] {
    const { left: x, top: y } = this.root.getBoundingClientRect();
    return Array.from(elements, (element) => {
      const { left, top, right, bottom } = element.getBoundingClientRect();
      return { left: left - x, top: top - y, right: right - x, bottom: bottom - y };
    });
  }

  /** Club and head's trace, step by step: closer together than words are long. */
  private pushLines(taken: Box[], camera: PerspectiveCamera, scene: SceneFrame, size: Vector2, mirror: 1 | -1): void {
    const push = (px: number, py: number, pz: number): void => {
      const { x, y } = this.project(camera, px, py, pz * mirror, size);
      taken.push({ left: x - ROOM, top: y - ROOM, right: x + ROOM, bottom: y + ROOM });
    };
    const { headTrace: heads } = scene;
    for (let i = 0; i < heads.length; i += TRACE_STEP) push(heads[i], heads[i + 1], heads[i + 2]);
    const { placement: p } = scene;
    const part = (axis: number, share: number): number => p[BUTT + axis] + share * (p[HEAD + axis] - p[BUTT + axis]);
    for (let share = 0; share <= 1; share += CLUB_STEP) push(part(0, share), part(1, share), part(2, share));
  }

  private project(camera: PerspectiveCamera, px: number, py: number, pz: number, size: Vector2): Vector3 {
    const p = this.p.set(px, py, pz).project(camera);
    p.x = (p.x * 0.5 + 0.5) * size.x;
    p.y = (0.5 - p.y * 0.5) * size.y;
    return p;
  }

  private bodyBox(camera: PerspectiveCamera, scene: SceneFrame, size: Vector2, mirror: 1 | -1): Box {
    const box: Box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
    const { placement } = scene;
    for (const at of BODY) {
      const { x, y } = this.project(camera, placement[at], placement[at + 1], placement[at + 2] * mirror, size);
      box.left = Math.min(box.left, x - ROOM);
      box.right = Math.max(box.right, x + ROOM);
      box.top = Math.min(box.top, y - ROOM);
      box.bottom = Math.max(box.bottom, y + ROOM);
    }
    return box;
  }

  private findRoom(
    caption: Caption,
    camera: PerspectiveCamera,
    scene: SceneFrame,
    size: Vector2,
    mirror: 1 | -1,
    insets: Insets,
    taken: readonly Box[],
  ): Box | undefined {
    const { anchor, width: w, height: h } = caption;
    const place = anchor(scene);
    const { x, y, z } = this.project(camera, place[0], place[1], place[2] * mirror, size);
    if (z > 1) return undefined;
    const body = taken[0];
    const outward = x < (body.left + body.right) / 2 ? -1 : 1;
    for (const side of [outward, -outward]) {
      for (const drop of DROPS) {
        const ax = x + side * LEADER;
        const ay = y + drop * LEADER;
        const left = side < 0 ? ax - w : ax;
        const box: Box = { left, top: ay - h / 2, right: left + w, bottom: ay + h / 2 };
        const fits =
          box.left >= insets.left + 4 &&
          box.right <= size.x - insets.right - 4 &&
          box.top >= 4 &&
          box.bottom <= size.y - insets.bottom;
        if (!fits || taken.some((other) => overlap(box, other))) continue;
        write(caption, 'at', `translate(${Math.round(left)}px, ${Math.round(box.top)}px)`);
        const from = `${(x + side * 5).toFixed(1)} ${(y + drop * 5).toFixed(1)}`;
        write(caption, 'd', `M${from}L${(ax - side * 4).toFixed(1)} ${ay.toFixed(1)}`);
        return box;
      }
    }
    return undefined;
  }
}

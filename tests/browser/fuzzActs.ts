import type { Page } from 'playwright-core';
import type { DeskLook } from '../../src/store/desk/probe';

/** What a page shows and holds at one instant. */
export interface PageRead {
  readonly probe: DeskLook;
  /** The document on the shelf, as text. */
  readonly stored: string | null;
  /** The pose that follows from that text, worked out anew by the same engine. */
  readonly poseOfStored: readonly number[];
  readonly sliders: Readonly<Record<string, number>>;
  readonly values: Readonly<Record<string, string>>;
  /** Dials whose value is being typed: a field stands in its place. */
  readonly typing: readonly string[];
  readonly plates: readonly string[];
}

/** Lets the page draw and save, then reads it in one go. */
export const readPage = (page: Page): Promise<PageRead> =>
  page.evaluate(async () => {
    const probed = globalThis as unknown as {
      slantwiseProbe: () => DeskLook;
      slantwisePoseFrom: (text: string) => number[];
    };
    const frame = (): Promise<unknown> => new Promise((resolve) => requestAnimationFrame(resolve));
    const isTyping = (): boolean =>
      document.activeElement instanceof HTMLInputElement && document.activeElement.type !== 'range';
    // The stage asks for its frame when the desk changes, before this asks for one.
    const typed = isTyping();
    await frame();
    // A field that vanishes is left a frame later, and takes what was typed then.
    if (typed) await frame();
    let probe = probed.slantwiseProbe();
    // As long as it takes: another player's swing is worked out beside the page, and a busy machine draws late.
    for (let i = 0; i < 2000; i++) {
      if (probe.status !== 'solving' && JSON.stringify(probe.drawn) === JSON.stringify(probe.pose)) break;
      await frame();
      probe = probed.slantwiseProbe();
    }
    // As when the page is left: what is not saved yet is saved now.
    dispatchEvent(new Event('pagehide'));
    const stored = localStorage.getItem('slantwise.document');
    const sliders: Record<string, number> = {};
    const values: Record<string, string> = {};
    const typing: string[] = [];
    for (const dial of document.querySelectorAll<HTMLElement>('[data-dial]')) {
      const id = dial.dataset['dial']!;
      sliders[id] = dial.querySelector<HTMLInputElement>('input[type="range"]')!.valueAsNumber;
      const shown = dial.querySelector('.dial-value');
      if (shown) values[id] = shown.textContent ?? '';
      if (dial.querySelector('.dial-typing input')) typing.push(id);
    }
    probe = probed.slantwiseProbe();
    return {
      probe: { ...probe, past: [], future: [] },
      stored,
      poseOfStored: probed.slantwisePoseFrom(stored!),
      sliders,
      values,
      typing,
      // Where a checkpoint is not reached the reason stands in place of the picture.
      plates: [...document.querySelectorAll('.plate')].map((plate) =>
        [...plate.querySelectorAll('.plate-reason, .plate-verdict')].map(({ textContent }) => textContent).join(' '),
      ),
    };
  });

/** Kinds of action; a kind named twice is done twice as often. */
export const acts = [
  'slide', 'slide', 'slide', 'drag', 'drag', 'step', 'step', 'type', 'double tap', 'key',
  'undo', 'undo', 'redo', 'reset', 'situation', 'ghost', 'exaggerate', 'scrub', 'scrub', 'position', 'play', 'speed',
  'plate', 'view', 'group', 'drawer', 'set-up', 'set-up', 'bench', 'pelvis', 'lost pointer',
] as const; // prettier-ignore
/** What a lesson adds: its drawers, and whatever can be pressed, chosen or typed in them that makes no file and no further record. */
export const lessonActs = ['lesson drawer', 'in a lesson', 'in a lesson'] as const;
export type Act = (typeof acts)[number] | (typeof lessonActs)[number];

/** Does one random action of a kind. Answers what was done, in words. */
export async function doAct(page: Page, act: Act, chance: () => number): Promise<string> {
  const numbers = [chance(), chance(), chance(), chance()];
  if (act === 'key') {
    const keys = ['ArrowLeft', 'ArrowRight', 'PageUp', 'PageDown', 'Home', 'End', 'Tab', 'Escape'];
    const key = keys[Math.floor(numbers[0] * keys.length)];
    await page.keyboard.press(key);
    return `key ${key}`;
  }
  const { said, way } = await page.evaluate(perform, { act, numbers });
  // The rest is the hand's: whatever lies there gets the events, as it would on a tablet.
  const [first, ...further] = way;
  if (first) {
    await page.mouse.move(...first);
    await page.mouse.down();
    for (const to of further) await page.mouse.move(...to);
    await page.mouse.up();
  }
  const done = first ? `${said} by hand` : said;
  return act === 'type' ? `${done} ${await typeValue(page, numbers)}` : done;
}

/** Types a value into the field that a tap has opened, one in ten past the ends of its dial, and takes it with Enter. */
async function typeValue(page: Page, [, b, c]: readonly number[]): Promise<string> {
  const text = await page.evaluate((share) => {
    const field = document.activeElement;
    const dial = field?.closest('.dial-typing') && field.closest('.dial');
    if (!dial) return undefined;
    const { min, max } = dial.querySelector<HTMLInputElement>('input[type="range"]')!;
    const value = Number(min) + (Number(max) - Number(min)) * (1.1 * share - 0.05);
    const label = field!.getAttribute('aria-label')!;
    return label.includes(', %:') ? String(Math.round(value * 100)) : value.toFixed(label.includes(', in:') ? 1 : 0);
  }, b);
  if (text === undefined) return 'nothing';
  await page.keyboard.type(text);
  if (c < 0.8) await page.keyboard.press('Enter');
  return c < 0.8 ? `${text} Enter` : text;
}

/** What was done in the page, and what is left for the mouse to do: where it goes down, and on. */
interface Done {
  readonly said: string;
  readonly way: readonly (readonly [number, number])[];
}

/** Runs inside the page: causes the events that a hand would, or says where the hand has to go. */
function perform({ act, numbers }: { act: string; numbers: readonly number[] }): Done {
  const way: [number, number][] = [];
  const [a, b, c, d] = numbers;
  const all = <T extends Element>(selector: string): T[] =>
    [...document.querySelectorAll<T>(selector)].filter((element) =>
      element.checkVisibility({ visibilityProperty: true }),
    );
  const pick = <T>(items: readonly T[], share: number): T | undefined => items[Math.floor(share * items.length)];
  const setField = (field: HTMLInputElement | HTMLSelectElement, value: string, event: string): void => {
    const prototype = field instanceof HTMLSelectElement ? HTMLSelectElement.prototype : HTMLInputElement.prototype;
    // What React listens to is the native setter and the event, in this order.
    Object.getOwnPropertyDescriptor(prototype, 'value')!.set!.call(field, value);
    field.dispatchEvent(new Event(event, { bubbles: true }));
  };
  const pointer = (element: EventTarget, type: string, clientX = 0): boolean =>
    element.dispatchEvent(new PointerEvent(type, { bubbles: true, pointerId: 1, button: 0, clientX }));
  const slideTo = (input: HTMLInputElement, share: number): string => {
    const [min, max] = [Number(input.min), Number(input.max)];
    const step = input.step === 'any' ? (max - min) / 1000 : Number(input.step);
    const value = String(Number((min + Math.round((share * (max - min)) / step) * step).toFixed(4)));
    setField(input, value, 'input');
    return value;
  };
  /** A place on screen inside an element; nothing where it cannot be brought into view. */
  const placeOn = (element: Element, shareX: number): [number, number] => {
    element.scrollIntoView({ block: 'nearest', inline: 'nearest', behavior: 'instant' });
    const { left, top, width, height } = element.getBoundingClientRect();
    return [left + width * shareX, top + height / 2];
  };
  const click = (selector: string, share = 0): string => {
    const button = pick(all<HTMLElement>(selector), share);
    if (button && d < 0.4) way.push(placeOn(button, 0.5));
    else button?.click();
    return `${act} ${button?.textContent?.trim().slice(0, 30) ?? 'nothing'}`;
  };
  const dials = all<HTMLInputElement>('.dial input[type="range"]');
  const dial = pick(dials, a);

  const doIt = (): string => {
    switch (act) {
      case 'slide':
        return `slide to ${dial ? slideTo(dial, b) : '-'}`;
      case 'drag':
      case 'lost pointer': {
        if (!dial) return `${act} -`;
        if (act === 'drag' && d < 0.6) {
          way.push(placeOn(dial, b), placeOn(dial, c), placeOn(dial, d / 0.6));
          return act;
        }
        pointer(dial, 'pointerdown');
        for (const share of [b, c, d]) slideTo(dial, share);
        if (act === 'drag') pointer(dial, 'pointerup', 100);
        else if (b < 0.5) pointer(dial, 'pointercancel');
        else dispatchEvent(new Event('blur'));
        return act;
      }
      case 'step':
        return click('.pm', a);
      case 'type': {
        click('.dial-value', a);
        return 'type';
      }
      case 'double tap':
        if (!dial) return `${act} -`;
        for (let i = 0; i < 2; i++) {
          pointer(dial, 'pointerdown');
          pointer(dial, 'pointerup');
        }
        return act;
      case 'undo':
      case 'redo':
        return click('.turn', act === 'undo' ? 0 : 0.6);
      case 'reset':
        return a < 0.4 ? click('.acts button:last-child') : 'reset not this time';
      case 'situation': {
        const button = pick([...document.querySelectorAll<HTMLElement>('.situations-list button')], a);
        button?.click();
        return `situation ${button?.textContent}`;
      }
      case 'ghost':
      case 'exaggerate': {
        const name = act === 'ghost' ? 'Keep as comparison' : 'Exaggerate';
        [...document.querySelectorAll('button')].find((button) => button.textContent === name)?.click();
        return act;
      }
      case 'scrub': {
        const rail = all<HTMLInputElement>('.scrub input')[0];
        return `scrub ${rail ? slideTo(rail, b) : '-'}`;
      }
      case 'position':
        return click('.step', a);
      case 'play': {
        click('.play');
        return a < 0.7 ? `${click('.play')} twice` : 'play';
      }
      case 'speed':
        return click('.speeds button', a);
      case 'plate':
        return click('.plate-header button', a);
      case 'view':
        return click('.stage-list .stage-item', a);
      case 'group':
        return click('.pick button', a);
      case 'drawer': {
        const ids = ['setUp', 'joints', 'about'];
        document.getElementById(`tab-${pick(ids, a)}`)?.click();
        return `drawer ${pick(ids, a)}`;
      }
      case 'lesson drawer': {
        const ids = ['seen', 'ledger', 'plan', 'ball', 'lessons'];
        const id = pick(ids, a);
        if (document.getElementById('drawer')?.dataset['drawer'] !== id) document.getElementById(`tab-${id}`)?.click();
        return `drawer ${id}`;
      }
      case 'in a lesson': {
        const drawer = document.getElementById('drawer')?.dataset['drawer'] ?? '';
        if (!['seen', 'ledger', 'map', 'compare', 'family', 'plan', 'ball', 'lessons'].includes(drawer)) return act;
        const kept =
          /film|picture|file|copy|save|share|print|wipe|remove|delete|add|start|duplicate|link|code|finish|device|archive|keep|(close|new) lesson/i;
        const things = all<HTMLElement>(
          '#drawer :is(.drawer-parts, .drawer-body) :is(button, input, select, textarea)',
        );
        const thing = pick(
          things.filter(({ textContent }) => !kept.test(textContent)),
          a,
        );
        if (thing instanceof HTMLSelectElement) setField(thing, pick([...thing.options], b)?.value ?? '', 'change');
        else if (thing instanceof HTMLInputElement && ['text', 'number'].includes(thing.type)) {
          setField(thing, pick(['', 'x', '3', '-4', '12', '7.5'], b)!, 'input');
          thing.dispatchEvent(new FocusEvent('focusout', { bubbles: true }));
        } else if (thing instanceof HTMLInputElement && thing.type === 'range') slideTo(thing, b);
        else if (!(thing instanceof HTMLInputElement && thing.type === 'file')) thing?.click();
        return `${act}, ${drawer}: ${thing?.textContent.slice(0, 30) ?? 'nothing'}`;
      }
      case 'set-up': {
        // A section at a time is in sight.
        if (d < 0.3) return click('.drawer-index button', b);
        const field = pick(
          all<HTMLInputElement | HTMLSelectElement>('.set-up :is(input, select)').filter(
            (one) => !one.closest('.dial'),
          ),
          a,
        );
        if (!field) return 'set-up closed';
        if (field instanceof HTMLSelectElement) {
          setField(field, pick([...field.options], b)!.value, 'change');
          return `choose ${field.value}`;
        }
        if (field.type === 'radio') {
          field.click();
          return `radio ${field.closest('label')?.textContent}`;
        }
        if (field.type === 'range') return `reading angle ${slideTo(field, b)}`;
        const typed = pick(['', 'x', '0', '3', '-2', '1.5', '165', '178', '193', '300', '260', '1e999'], b)!;
        setField(field, typed, 'input');
        field.dispatchEvent(new FocusEvent('focusout', { bubbles: true }));
        return `type ${typed}`;
      }
      case 'bench': {
        const joint = pick(all<HTMLInputElement>('.bench-row input[type="range"]'), a);
        return `bench ${joint ? slideTo(joint, b) : '-'}`;
      }
      case 'pelvis':
        return click('.set-up button[role="switch"]');
      default:
        return 'nothing';
    }
  };
  return { said: doIt(), way };
}

import type { Page } from 'playwright-core';

/**
 * Looks at a page the way a finger does: every control that can be hit is big enough, apart from its neighbours, and
 * no word is cut. Answers what is wrong, one sentence each.
 */
export const findCrowding = (page: Page): Promise<string[]> => page.evaluate(measure);

/** Runs inside the page. */
function measure(): string[] {
  const TARGET = 48;
  const GAP = 8;
  const SLACK = 0.75;
  const wrong: string[] = [];
  interface Box {
    left: number;
    top: number;
    right: number;
    bottom: number;
  }
  const name = (element: Element): string =>
    `${element.tagName.toLowerCase()} "${(element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 32)}"`;
  const isSeen = (element: Element): boolean => {
    if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: false })) return false;
    const { width, height } = element.getBoundingClientRect();
    return width > 1 && height > 1 && !element.closest('.unseen');
  };
  /** The part of a box that its scrolling or clipping ancestors show. */
  const shown = (element: Element, box: Box): Box => {
    let { left, top, right, bottom } = box;
    for (let parent = element.parentElement; parent; parent = parent.parentElement) {
      const { overflow, position } = getComputedStyle(parent);
      // What is fixed is cut by the screen alone.
      if (position === 'fixed' && overflow === 'visible') break;
      if (overflow === 'visible') continue;
      const clip = parent.getBoundingClientRect();
      left = Math.max(left, clip.left);
      top = Math.max(top, clip.top);
      right = Math.min(right, clip.right);
      bottom = Math.min(bottom, clip.bottom);
    }
    return { left, top, right, bottom };
  };
  const isWhole = (element: Element, box: Box): boolean => {
    const part = shown(element, box);
    return part.right - part.left > box.right - box.left - 1 && part.bottom - part.top > box.bottom - box.top - 1;
  };

  /** What a finger hits: a title's whole plate, the label of a radio or a tick, and of a 56 px slider the 48 px in its middle. */
  const targetOf = (element: Element): Box => {
    const owner = element.closest('.plate-header')
      ? element.closest('.plate')!
      : (element.closest('.choice label, .showing-tick') ?? element);
    const { left, top, right, bottom } = owner.getBoundingClientRect();
    const spare = element.matches('input[type="range"]') ? Math.max(0, (bottom - top - TARGET) / 2) : 0;
    return { left, top: top + spare, right, bottom: bottom - spare };
  };
  /** Nothing lies over its middle or over one of its corners. */
  const isOnTop = (element: Element, box: Box): boolean => {
    const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
    const points = [
      [x, y],
      [box.left + 4, box.top + 4],
      [box.right - 4, box.top + 4],
      [box.left + 4, box.bottom - 4],
      [box.right - 4, box.bottom - 4],
    ];
    return points.every(([px, py], i) => {
      const hit = document.elementFromPoint(px, py);
      if (!hit || element.contains(hit) || hit.contains(element) || element.closest('label')?.contains(hit))
        return hit !== null;
      // Beside the middle only a sheet on top counts, or what stays while the rest scrolls below it: a neighbour on a corner is just what is looked for.
      const sheet = hit.closest('.plan-acts, .drawer-index, .drawer, .situations, .stage-menu');
      return i > 0 && (sheet === null || sheet.contains(element));
    });
  };
  const controls = [...document.querySelectorAll('button, input, select, summary, a[href]')]
    .filter(isSeen)
    .map((element) => ({ element, box: targetOf(element) }))
    .filter(({ element, box }) => isWhole(element, box) && isOnTop(element, box));
  if (controls.length < 10) wrong.push(`only ${controls.length} controls can be hit`);

  for (const { element, box } of controls) {
    const [width, height] = [box.right - box.left, box.bottom - box.top];
    if (width < TARGET - SLACK || height < TARGET - SLACK)
      wrong.push(`${name(element)} is ${width.toFixed(0)} x ${height.toFixed(0)} px`);
    if (box.left < -SLACK || box.right > innerWidth + SLACK) wrong.push(`${name(element)} leaves the screen`);
    const edge = Math.min(box.left + 18, innerWidth - box.right + 18);
    if (element.matches('.rule input') && edge < 32) wrong.push(`${name(element)} comes ${edge} px near the edge`);
  }
  /** Parts of one choice stand side by side on purpose: between them a miss is another choice, not another control. */
  const isOneChoice = (a: Element, b: Element): boolean => {
    const group = a.closest('.speeds, .choice-options, .pick, .tabs, .stage-choice, .drawer-index, .drawer-parts');
    return group !== null && group.contains(b);
  };
  controls.forEach((a, i) => {
    for (const b of controls.slice(i + 1)) {
      if (a.element.contains(b.element) || b.element.contains(a.element)) continue;
      const across = Math.max(a.box.left, b.box.left) - Math.min(a.box.right, b.box.right);
      const down = Math.max(a.box.top, b.box.top) - Math.min(a.box.bottom, b.box.bottom);
      const apart = Math.max(across, down);
      if (apart < -SLACK) wrong.push(`${name(a.element)} overlaps ${name(b.element)}`);
      else if (apart < GAP - SLACK && !isOneChoice(a.element, b.element))
        wrong.push(`${name(a.element)} is ${apart.toFixed(1)} px from ${name(b.element)}`);
    }
  });

  // Words: inside what holds them, inside the screen, not on other words, never smaller than 15 px.
  const texts: { box: Box; text: string; element: Element }[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement!;
    const text = node.textContent!.trim();
    if (!text || !isSeen(element) || element.closest('svg, option, script, style, .stage-captions')) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const { left, top, right, bottom } = range.getBoundingClientRect();
    const box = { left, top, right, bottom };
    const scrolled = element.closest('.drawer-body, .situations');
    if (scrolled && !isWhole(element, box)) continue;
    if (!isWhole(element, box)) wrong.push(`"${text.slice(0, 40)}" is cut`);
    const style = getComputedStyle(element);
    if (parseFloat(style.fontSize) < 15) wrong.push(`"${text.slice(0, 40)}" is ${style.fontSize}`);
    if (style.textOverflow === 'ellipsis' && element.scrollWidth > element.clientWidth + 1)
      wrong.push(`"${text.slice(0, 40)}" ends in dots`);
    const holder = element.closest('button, summary, .slip, .save-status, .status, .choice span, .dial, .path-readout');
    const isBox = holder && getComputedStyle(holder).display !== 'contents';
    if (isBox && !holder.matches('.plate-header button')) {
      const held = holder.getBoundingClientRect();
      if (left < held.left - 1 || right > held.right + 1) wrong.push(`"${text.slice(0, 40)}" runs out of its place`);
    }
    const covered = [left + 1, (left + right) / 2, right - 1].some((x) => {
      const hit = document.elementFromPoint(x, (top + bottom) / 2);
      const isOther = hit && !element.contains(hit) && !hit.contains(element);
      return isOther && hit.closest('.drawer, .situations, .stage-menu');
    });
    if (!covered) texts.push({ box, text, element });
  }
  texts.forEach((a, i) => {
    for (const b of texts.slice(i + 1)) {
      // Line boxes are higher than letters: a third of the overlap is air.
      const height = Math.min(a.box.bottom - a.box.top, b.box.bottom - b.box.top);
      const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
      const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
      const nested = a.element.contains(b.element) || b.element.contains(a.element);
      if (!nested && across > 1 && down > height * 0.34)
        wrong.push(`"${a.text.slice(0, 30)}" lies on "${b.text.slice(0, 30)}"`);
    }
  });
  if (document.documentElement.scrollWidth > innerWidth) wrong.push('the page is wider than the screen');
  return [...new Set(wrong)];
}

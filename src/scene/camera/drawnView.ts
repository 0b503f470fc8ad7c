import type { View } from './view';

/** From where the stage is seen now and how large its picture is, css px: what a still of the stage is taken from. */
export const drawnView: { view: View | undefined; width: number; height: number } = {
  view: undefined,
  width: 960,
  height: 640,
};

import { useState } from 'react';
import { BrokenShaft, SHAFT_DASHES } from '../lines/brokenShaft';
import { usePose, useScene } from './sceneContext';

/** The ghost's shaft in plum dash-dot-dot. */
export function Ghost() {
  const { theme, lines } = useScene();
  const [shaft] = useState(() => new BrokenShaft(lines.ghost, SHAFT_DASHES.ghost, theme.ghost));
  usePose(({ legends }, { ghost, pose }) => {
    legends.ghost = shaft.draw(ghost, pose);
  });
  return null;
}

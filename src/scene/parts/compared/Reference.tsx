import { useState } from 'react';
import { BrokenShaft, SHAFT_DASHES } from '../../lines/brokenShaft';
import { usePose, useScene } from '../sceneContext';

/** The reference's shaft in verdigris dashes. */
export function Reference() {
  const { theme, lines } = useScene();
  const [shaft] = useState(() => new BrokenShaft(lines.reference, SHAFT_DASHES.reference, theme.reference));
  usePose(({ legends }, { reference, pose }) => {
    legends.reference = shaft.draw(reference, pose);
  });
  return null;
}

import { useState } from 'react';
import { BodyFan } from '../../lines/bodyFan';
import { usePose, useScene } from '../sceneContext';

const NOBODY: readonly never[] = [];

/** Other bodies that give the same picture, in thin lines of the second body's colour. Not through the player's eyes. */
export function Fan() {
  const { theme, lines, frame } = useScene();
  const [fan] = useState(() => new BodyFan(lines.fan, theme.ghost));
  usePose(({ standpoint }, { fan: bodies }) => {
    fan.draw(standpoint === 'eyes' ? NOBODY : (bodies ?? NOBODY), frame.figure!, frame.ball, frame.placement);
  });
  return null;
}

import { solveReference } from '../../solving/reference/reference';
import type { Answer, Question } from '../derive/references';

// Looks for reference swings beside the screen, so that the figure keeps moving meanwhile.
self.onmessage = ({ data: { key, body, club } }: MessageEvent<Question>) => {
  const answer: Answer = { key, fit: solveReference(body, club) };
  self.postMessage(answer);
};

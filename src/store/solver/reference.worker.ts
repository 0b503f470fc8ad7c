import { solveReference, type ReferenceFit } from '../../solving/reference/reference';
import type { ReferenceQuestion } from '../derive/references';
import { serveWorker } from './workerClient';

// Looks for reference swings beside the screen, so that the figure keeps moving meanwhile.
serveWorker<ReferenceQuestion, ReferenceFit>(({ body, club }, say) => say(solveReference(body, club)));

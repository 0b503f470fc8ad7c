import { solveReference, type ReferenceFit } from '../../solving/reference/reference';
import { serveWorker } from '../solver/workerClient';
import type { ReferenceQuestion } from './referenceQuestion';

// Looks for reference swings beside the screen, so that the figure keeps moving meanwhile.
serveWorker<ReferenceQuestion, ReferenceFit>(({ body, club }, say) => say(solveReference(body, club)));

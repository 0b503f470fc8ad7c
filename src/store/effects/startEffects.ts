import type { Shelf } from '../document/persistence';
import { answerDrawers } from './answerDrawers';
import { endTrialOnChange } from './endTrialOnChange';
import { holdBackMovements } from './holdBackMovements';
import { referenceSearch } from './referenceSearch';

/**
 * Starts everything that acts on changes of the desk by itself; nothing of this starts by being imported. Solved reference swings are kept
 * on the shelf. Answers how to end it all.
 */
export function startEffects(shelf?: Shelf): () => void {
  const ends = [referenceSearch.follow(shelf), endTrialOnChange(), holdBackMovements(), answerDrawers()];
  return () => {
    for (const end of ends) end();
  };
}

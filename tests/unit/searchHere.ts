import { solveReference } from '../../src/solving/reference/reference';
import { referenceSearch } from '../../src/store/effects/referenceSearch';

// Node has no workers: for a test that imports this, reference swings are searched for here, and answered at once.
referenceSearch.searchHere(solveReference);

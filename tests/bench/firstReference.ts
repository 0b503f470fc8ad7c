import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { solveReference } from '../../src/solving/reference/reference';

// A process that has solved nothing yet, as a worker of the app: prints how long its first reference swing takes, s.
const [statureM, id] = process.argv.slice(2);
const body = bodyOf({ statureM: Number(statureM), handed: 'right' });
const club = clubOf(CLUBS[id as ClubId]);
const start = performance.now();
solveReference(body, club);
console.log((performance.now() - start) / 1000);

import { bodyOf } from '../../src/model/body';
import { CLUBS, clubOf, type ClubId } from '../../src/model/club';
import { solveReference } from '../../src/solving/reference/reference';

// A process that has solved nothing yet, as a worker of the app: prints how long its first reference swing takes by the clock
// and in processor time, s. The processor counts the compiler's threads too, and no waiting for other programs.
const [statureM, id] = process.argv.slice(2);
const body = bodyOf({ statureM: Number(statureM), handed: 'right' });
const club = clubOf(CLUBS[id as ClubId]);
const [start, cpu] = [performance.now(), process.cpuUsage()];
solveReference(body, club);
const seconds = (performance.now() - start) / 1000;
const { user, system } = process.cpuUsage(cpu);
console.log(JSON.stringify([seconds, (user + system) / 1e6]));

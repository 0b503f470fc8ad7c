import { POSITION_IDS, type PositionId, type Positions } from '../../reading/positions';

const POSITION_NAMES: Readonly<Record<PositionId, string>> = {
  P1: 'address',
  P2: 'shaft parallel going back',
  P3: 'lead arm parallel going back',
  P4: 'top of the backswing',
  P5: 'lead arm parallel',
  P6: 'shaft parallel',
  P7: 'impact',
  P8: 'shaft parallel after impact',
  P9: 'lead arm parallel after impact',
  P10: 'finish',
};

/** Closer than this to a position is at it, s. */
const AT = 0.0005;

/** Where the playhead is, in words: "P5, lead arm parallel, 91 milliseconds before impact". Times are the player's own. */
export function sayTime(t: number, positions: Positions, tempo: number): string {
  const at = POSITION_IDS.find((id) => positions[id] !== null && Math.abs(positions[id] - t) < AT);
  const name = at ? `${at}, ${POSITION_NAMES[at]}` : phaseOf(t, positions);
  const impact = positions.P7;
  if (impact === null || at === 'P7') return name;
  const ms = Math.round(Math.abs(t - impact) * tempo * 1000);
  return `${name}, ${ms} milliseconds ${t < impact ? 'before' : 'after'} impact`;
}

function phaseOf(t: number, { P4, P7 }: Positions): string {
  if (P4 !== null && t < P4) return 'backswing';
  return P7 !== null && t < P7 ? 'downswing' : 'follow-through';
}

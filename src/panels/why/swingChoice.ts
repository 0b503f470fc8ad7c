import { lessonsOf, listPlayers, swingsOf, type BookRecord } from '../../record';
import { sayDay } from '../../words/book/days';
import { matchOnSteps } from '../../solving/diagnosis/matchOnSteps';
import { STILL_DIALLED, SITUATIONS, type Document } from '../../store';
import { toDialled } from '../../store/document/convert';
import type { Swing } from '../../reading/swing';
import { remember } from '../../store/derive/remember';
import { SWING_NAMES, situationSwing } from '../../store/derive/swings';
import type { Seen, Sighting } from '../../store/document/sighting';
import type { SwingId, SwingOf } from '../../store/desk/whyState';
import { STILL } from '../../model/movements';
import { DEFAULT_BANDS } from '../../reading/verdicts';

/** A swing in a list. One from the lesson book brings itself along. */
interface SwingOption {
  readonly value: SwingId;
  readonly text: string;
  readonly swing?: SwingOf;
}
/** Swings in a list under one heading. */
interface SwingGroup {
  readonly label: string;
  readonly options: readonly SwingOption[];
}

/** More than these make a list that nobody scrolls: older ones are laid out from the lesson book. */
const MOST = 200;

/** The desk's own swings and the ready-made situations. */
export function deskGroups(hasGhost: boolean, hasPlan: boolean, before: string | undefined): readonly SwingGroup[] {
  return [
    {
      label: 'On the desk',
      options: [
        { value: 'now', text: SWING_NAMES.now },
        { value: 'reference', text: SWING_NAMES.reference },
        ...(hasPlan ? [{ value: 'plan', text: SWING_NAMES.plan }] : []),
        ...(hasGhost ? [{ value: 'ghost', text: SWING_NAMES.ghost }] : []),
        ...(before === undefined ? [] : [{ value: 'before', text: before }]),
      ],
    },
    {
      label: 'Situations',
      options: SITUATIONS.filter(({ id }) => id !== 'reference').map(({ id, label }) => ({
        value: situationSwing(id),
        text: label,
      })),
    },
  ];
}

const swingOf = (name: string, { player, club, setUp, movements }: Document): SwingOf => ({
  name,
  player,
  club,
  setUp,
  movements,
});

const isMarked = ({ leadArmParallel, shaftParallel }: Seen): boolean =>
  leadArmParallel !== null || shaftParallel !== null;

/** Every swing of the lesson book, player by player: kept swings, and of each lesson what was seen, now and the plan. */
export function bookGroups(records: ReadonlyMap<string, BookRecord>): readonly SwingGroup[] {
  let left = MOST;
  const groups: SwingGroup[] = [];
  for (const { player } of listPlayers(records, '', 'lastLesson', false)) {
    const options: SwingOption[] = [];
    for (const { id, name, now } of swingsOf(records, player.id)) {
      options.push({ value: id, text: name, swing: swingOf(`${player.name}, ${name}`, now) });
    }
    for (const { id, date, now } of lessonsOf(records, player.id)) {
      const day = sayDay(date);
      const add = (part: string, text: string, swing: Document, more: Partial<SwingOf> = {}): void => {
        const name = `${player.name}, ${day}, ${text}`;
        options.push({ value: `${id} ${part}`, text: `${day}, ${text}`, swing: { ...swingOf(name, swing), ...more } });
      };
      if (isMarked(now.seen))
        add('seen', 'as seen', now, { movements: STILL_DIALLED, likely: explanationOf(now.seen) });
      add('now', 'now', now);
      if (now.plan) add('plan', 'plan', { ...now, movements: now.plan.movements });
    }
    if (options.length > 0) groups.push({ label: player.name, options: options.slice(0, left) });
    left -= options.length;
    if (left <= 0) break;
  }
  return groups;
}

const toMetres = ({ cm, plusMinusCm }: Sighting) => ({ value: cm / 100, plusMinus: plusMinusCm / 100 });

/** The most likely explanation of marks. Worked out once for each base and reading angle. */
function explanationOf({ leadArmParallel: arm, shaftParallel: shaft }: Seen): NonNullable<SwingOf['likely']> {
  const seen = { ...(arm && { leadArmParallel: toMetres(arm) }), ...(shaft && { shaftParallel: toMetres(shaft) }) };
  return remember((swing: Swing, armAngle: number) => {
    const [first] = matchOnSteps({ swing, from: STILL, seen, bands: DEFAULT_BANDS, armAngle }).explanations;
    return first ? toDialled(first.movements, STILL_DIALLED) : STILL_DIALLED;
  });
}

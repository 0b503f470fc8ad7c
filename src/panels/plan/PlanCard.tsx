import { CHECKPOINT_IDS } from '../../reading/checkpointTable';
import { DIALS } from '../../model/movements';
import { useDerived, useDesk } from '../../store';
import type { Effects, StepPlan } from '../../solving/diagnosis/planOnSteps';
import type { PlanAnswer } from '../../solving/diagnosis/solverJobs';
import {
  CHECKPOINT_NAMES,
  DIAL_NAMES,
  sayAttack,
  sayFaceBand,
  sayHeadSpeed,
  sayMovement,
  sayPath,
  type Units,
} from '../../words';
import { sayCurve, sayMiss, sayNoShot, sayStart } from '../../words/swing/shot';
import { practiceOf } from '../../words/why/planText';
import { sayDifference, sayJudged, sayShort } from '../../words/why/whatToChange';

interface Props {
  readonly plan: StepPlan;
  readonly answer: PlanAnswer;
}

/** One plan: what moves, the readings and the ball before and after, how surely it lands, what to feel and what to practise. */
export function PlanCard({ plan, answer }: Props) {
  const units = useDesk(({ document }) => document.units);
  return (
    <>
      <Moves plan={plan} />
      {plan.status === 'closest' && (
        <p className="plan-short">Closest, {sayShort(plan.short, units).inSentence} short</p>
      )}
      <BeforeAfter plan={plan} answer={answer} />
      <Practices plan={plan} />
    </>
  );
}

const movedDials = ({ change }: StepPlan) => DIALS.filter(({ id }) => change[id] !== 0);

/** "Lead wrist  cupped 16° → 0°  +16°" */
function Moves({ plan }: { plan: StepPlan }) {
  const units = useDesk(({ document }) => document.units);
  return (
    <table className="plan-moves">
      <caption className="unseen">What moves</caption>
      <tbody>
        {movedDials(plan).map(({ id }) => {
          const before = sayMovement(id, { ...plan.movements, [id]: plan.movements[id] - plan.change[id] }, units);
          const after = sayMovement(id, plan.movements, units);
          return (
            <tr key={id}>
              <th scope="row">{DIAL_NAMES[id].label}</th>
              <td className="plan-fromto">
                <span aria-hidden="true">{sayFromTo(short(before.phrase), short(after.phrase))}</span>
                <span className="unseen">
                  from {before.spoken} to {after.spoken}
                </span>
              </td>
              <td>{sayDifference(id, plan.change[id], units)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

const short = (phrase: string): string => phrase.replace('as reference', 'reference');

const AMOUNT = /^(\D*)([\d.]+)(.*)$/;

/** "12 → 4 ms early", "cupped 16 → 1°": the words around the amounts are said once where they are the same. */
function sayFromTo(before: string, after: string): string {
  const [, head, amount, tail] = AMOUNT.exec(before) ?? [];
  const [, otherHead, other, otherTail] = AMOUNT.exec(after) ?? [];
  const isSame = amount !== undefined && head === otherHead && tail === otherTail;
  return isSame ? `${head}${amount} → ${other}${tail}` : `${before} → ${after}`;
}

interface Told {
  readonly text: string;
  readonly spoken: string;
}
interface Line extends Told {
  readonly label: string;
}

/** What a swing does to club and ball, line by line. */
function linesOf({ impliedPath, delivery, shot }: Effects, handed: 'right' | 'left', units: Units): Line[] {
  if ('missing' in delivery) {
    const text = sayNoShot(delivery);
    return [...(impliedPath === null ? [] : [sayPath(impliedPath)]), { label: 'Delivery', text, spoken: text }];
  }
  const [strike] = sayMiss(delivery, units);
  return [
    sayPath(delivery.path),
    sayFaceBand(delivery),
    sayAttack(delivery.attack),
    sayHeadSpeed(delivery.headSpeed, units),
    ...('missing' in shot ? [] : [sayStart(shot, handed), sayCurve(shot, handed, units)]),
    'missing' in shot ? { label: strike.label, text: sayNoShot(shot), spoken: sayNoShot(shot) } : strike,
  ];
}

function BeforeAfter({ plan, answer }: Props) {
  const units = useDesk(({ document }) => document.units);
  const bands = useDerived(({ exactBands }) => exactBands);
  const handed = useDerived(({ player }) => player.handed);
  const rows: { label: string; before: Told; after: Told }[] = CHECKPOINT_IDS.map((id) => ({
    label: CHECKPOINT_NAMES[id].title,
    before: sayJudged(id, answer.readingsNow[id], bands, units),
    after: sayJudged(id, plan.readings[id], bands, units),
  }));
  const before = linesOf(answer.now, handed, units);
  const after = linesOf(plan.effects, handed, units);
  for (const line of after) {
    const was = before.find(({ label }) => label === line.label);
    const nothing = { text: '–', spoken: 'no number' };
    rows.push({ label: line.label, before: was ? without(was) : nothing, after: without(line) });
  }
  return (
    <table className="plan-table">
      <caption className="unseen">Readings and side effects, now and after</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">Reading</span>
          </th>
          <th scope="col">now</th>
          <th scope="col">after</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ label, before: was, after: becomes }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <Cell {...was} />
            <Cell {...becomes} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The label stands in the row's head already. */
const without = ({ label, text, spoken }: Line): Told => ({
  text,
  spoken: spoken.startsWith(label) ? spoken.slice(label.length).replace(/^:? /, '') : spoken,
});

const Cell = ({ text, spoken }: Told) => (
  <td>
    {text === spoken ? (
      text
    ) : (
      <>
        <span aria-hidden="true">{text}</span>
        <span className="unseen">{spoken}</span>
      </>
    )}
  </td>
);

/** Feel first, then the drills, then what to mind: what the plan's record will hold when it is chosen. */
function Practices({ plan }: { plan: StepPlan }) {
  const { feel, drills, cautions } = practiceOf(DIALS.map(({ id }) => ({ id, change: plan.change[id] })));
  if (feel === '') return null;
  return (
    <dl className="plan-practice">
      <dt>Feel</dt>
      <dd>{feel}</dd>
      <dt>Practise</dt>
      {drills.map(({ name, how, often }) => (
        <dd key={name}>
          <b>{name}</b> {how.join(' ')} <em>{often}.</em>
        </dd>
      ))}
      <dt>Caution</dt>
      {cautions.map((caution) => (
        <dd key={caution}>{caution}</dd>
      ))}
    </dl>
  );
}

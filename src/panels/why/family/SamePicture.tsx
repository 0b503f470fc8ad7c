import { useEffect, useRef, useState, type ReactNode } from 'react';
import type { Family } from '../../../solving/family/question';
import { findDifferences, type Difference } from '../../../solving/family/signs';
import { useDesk, type Dialled } from '../../../store';
import { dialledOf, lendGhost, lookAt } from '../../../store/rules/familyActions';
import { takeDialled } from '../../../store/desk/whyActions';
import { useAsked } from '../../../store/solver/solverClient';
import {
  BEYOND_USUAL,
  FAN,
  LOOKING,
  NOTHING_READ,
  SAME_BODY,
  sayBody,
  sayWhatTells,
  sayEnd,
  sayFamily,
  sayFree,
  sayFamilySource,
} from '../../../words/why/family';
import { Choice } from '../../fields/Choice';
import { AsItIs, Lead, Source } from '../Lead';
import './family.css';

/** The same picture, other bodies: what else could look like this, and what to look at to tell it. */
export default function SamePicture({ drawings }: { drawings: (chosen: number) => ReactNode }) {
  const answer = useAsked((asked) => asked.answer);
  const isBusy = useAsked((asked) => asked.isBusy);
  const isMarked = useDesk(({ document: { seen } }) => seen.leadArmParallel !== null || seen.shaftParallel !== null);
  if (answer?.kind === 'refused') return <Lead text={answer.message} />;
  if (answer?.kind !== 'family') return <Lead text={isBusy ? LOOKING : NOTHING_READ} />;
  const { family, signs } = answer;
  return (
    <div className="family">
      <AsItIs />
      <Lead text={sayFamily(family, isMarked)} />
      {family.status === 'found' && family.members.length > 1 && (
        <Members family={family} signs={signs} drawings={drawings} />
      )}
      <Source>{sayFamilySource(isMarked)}</Source>
    </div>
  );
}

type Against = 'low' | 'smallest' | 'high';

interface MembersProps {
  readonly family: Family;
  readonly signs: readonly Float64Array[];
  readonly drawings: (chosen: number) => ReactNode;
}

/** How many differences are listed. */
const LISTED = 4;

function Members({ family, signs, drawings }: MembersProps) {
  const units = useDesk(({ document }) => document.units);
  const { members, smallest, ends, deaf } = family;
  const last = members.length - 1;
  const [chosen, setChosen] = useState(0);
  const [against, setAgainst] = useState<Against>('high');
  const at = Math.min(chosen, last);
  const other = { low: 0, smallest, high: last }[against];
  const dialled = dialledOf(members[at].movements);
  useGhost(
    dialled,
    members.filter((_, i) => i !== at).map(({ movements }) => dialledOf(movements)),
  );
  // Told of the chosen body, against the other.
  const differences = findDifferences(signs[other], signs[at]).filter(({ size }) => size >= 1);
  return (
    <>
      {family.range === 'limits' && <p className="fine">{BEYOND_USUAL}</p>}
      {drawings(at)}
      <div className="family-slide">
        <input
          type="range"
          min={0}
          max={last}
          step={1}
          value={at}
          aria-label="Bodies that give this picture"
          aria-valuetext={sayBody(members[at].movements, units)}
          onChange={(event) => setChosen(event.currentTarget.valueAsNumber)}
        />
        <i className="family-smallest" style={{ left: `${(100 * smallest) / last}%` }} aria-hidden="true">
          smallest change
        </i>
        <p className="family-ends">
          <span>{sayEnd(ends[0])}</span>
          <span>{sayEnd(ends[1])}</span>
        </p>
      </div>
      <p className="fine">{FAN}</p>
      <p className="family-body">
        <b>This body:</b> {sayBody(members[at].movements, units)}
        {at === smallest && ' (the smallest change)'}
      </p>
      <div className="plan-acts">
        <button type="button" className="plain" onClick={() => takeDialled('Same picture', dialled)}>
          Use this swing
        </button>
      </div>
      <h3>Where it differs most</h3>
      <Choice
        label="From the body with"
        value={against}
        options={[
          { value: 'low', text: sayEnd(ends[0]).replace('mostly ', '') },
          { value: 'smallest', text: 'smallest change' },
          { value: 'high', text: sayEnd(ends[1]).replace('mostly ', '') },
        ]}
        onChoose={setAgainst}
      />
      <Differences of={differences} units={units} />
      {sayFree(deaf) !== undefined && <p className="fine">{sayFree(deaf)}</p>}
    </>
  );
}

/** Keeps the chosen body on the stage as ghost while the drawer is open, and the others in thin lines. */
function useGhost(dialled: Dialled, others: readonly Dialled[]): void {
  const lent = useRef<ReturnType<typeof lendGhost>>(undefined);
  const key = JSON.stringify([dialled, others]);
  useEffect(() => {
    lent.current = lendGhost();
    return () => lent.current?.end();
  }, []);
  // The same dials are a fresh object at every render.
  useEffect(() => {
    const [shown, rest] = JSON.parse(key) as [Dialled, readonly Dialled[]];
    lent.current?.show(shown, rest);
  }, [key]);
}

function Differences({ of, units }: { of: readonly Difference[]; units: { readonly length: 'cm' | 'in' } }) {
  if (of.length === 0) return <p>{SAME_BODY}</p>;
  return (
    <ol className="family-differences" aria-label="Differences, the plainest first">
      {of.slice(0, LISTED).map((difference) => {
        const { text, spoken } = sayWhatTells(difference, units);
        return (
          <li key={`${difference.at} ${difference.sign.id}`}>
            <span aria-hidden="true">{text}</span>
            <span className="unseen">{spoken}</span>
            <button type="button" className="plain" onClick={() => lookAt(difference)}>
              Look<span className="unseen">: {spoken}</span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}

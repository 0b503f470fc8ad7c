import { useMemo } from 'react';
import { heelLiftAt } from '../../figure/stance';
import { isReached, readCheckpoints, type CheckpointId } from '../../reading/checkpoints';
import { withMovements } from '../../reading/swing';
import { useDerived, useDesk } from '../../store';
import { toArmAngle } from '../../store/document/convert';
import { useAsked } from '../../store/solver/solverClient';
import { sayCheckpoint } from '../../words';
import { sayBody } from '../../words/why/family';
import { plateFigureOf } from '../figure/figurePainter';
import { Drawing } from '../figure/Drawing';
import { fitPicture, plateDrawing } from './plateDrawing';
import './familyPlates.css';

/** A small plate of each body that gives one picture, at lead arm parallel: the line is the same, the body is not. */
const SIZE = { width: 112, height: 88 };
const AT: CheckpointId = 'leadArmParallel';

/** The strip of small plates. Still pictures: the slider below chooses. */
export default function FamilyPlates({ chosen }: { chosen: number }) {
  const answer = useAsked((asked) => asked.answer);
  const reference = useDerived(({ referenceSwing }) => referenceSwing);
  const ground = useDerived(({ ground: of }) => of);
  const bands = useDerived(({ exactBands }) => exactBands);
  const units = useDesk(({ document }) => document.units);
  const handed = useDesk(({ document }) => document.player.handed);
  const armAngle = useDesk(({ document }) => toArmAngle(document));
  const family = answer?.kind === 'family' && answer.family.status === 'found' ? answer.family : undefined;
  const plates = useMemo(() => {
    const { letters } = fitPicture(AT, SIZE);
    const plate = plateFigureOf(ground.body, ground.club);
    return family?.members.map(({ movements }) => {
      const swing = withMovements(reference, movements);
      const checkpoint = readCheckpoints(swing, armAngle)[AT];
      const words = sayCheckpoint(AT, checkpoint, bands, units);
      const heelLift = isReached(checkpoint) ? heelLiftAt(swing, checkpoint.t) : 0;
      const stance = { ballPoint: swing.reference.ballPoint, heelLift };
      const of = { id: AT, plate, checkpoint, stance, bands, units, handed, letters, finish: 'drawn' as const };
      const drawing = plateDrawing({ ...of, reference: undefined, ghost: undefined }, words);
      return { drawing, letters, label: sayBody(movements, units) };
    });
  }, [family, reference, ground, bands, units, handed, armAngle]);
  return (
    <ul className="family-plates" aria-label="Bodies that give this picture, seen down the line">
      {plates?.map(({ drawing, letters, label }, i) => (
        <li key={label} data-chosen={i === chosen || undefined} data-smallest={i === family?.smallest || undefined}>
          {drawing && <Drawing drawing={drawing} letters={letters} label={label} />}
        </li>
      ))}
    </ul>
  );
}

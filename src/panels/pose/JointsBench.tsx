import { LevaPanel, useControls, useCreateStore } from 'leva';
import type { JointId } from '../../model/joints';
import { benchTheme, joint } from './benchPlugin';

/** Sixteen degrees of freedom on four boards of four. */
const BOARDS: readonly { readonly title: string; readonly ids: readonly JointId[] }[] = [
  { title: 'Pelvis', ids: ['pelvisSway', 'pelvisHeight', 'pelvisThrust', 'pelvisTurn'] },
  { title: 'Bend and tilt', ids: ['pelvisBend', 'pelvisSideTilt', 'trunkBend', 'trunkTilt'] },
  { title: 'Chest and shoulders', ids: ['thoraxTurn', 'leadProtraction', 'trailProtraction', 'leadArmAdduction'] },
  { title: 'Lead arm and wrist', ids: ['leadArmElevation', 'leadArmRoll', 'leadWristFlexion', 'leadWristRadial'] },
];

function Board({ title, ids }: (typeof BOARDS)[number]) {
  const store = useCreateStore();
  useControls(() => Object.fromEntries(ids.map((id) => [id, joint({ joint: id })])), { store });
  return (
    <section className="bench-board" aria-label={title}>
      <h3>{title}</h3>
      <LevaPanel store={store} fill flat titleBar={false} hideCopyButton theme={benchTheme} />
    </section>
  );
}

/** Every degree of freedom at the playhead, for the curious. What is bent here is shown and never stored. */
export default function JointsBench() {
  return (
    <>
      <p className="fine">Every joint at this instant. Bend one: the figure shows it, the swing stays.</p>
      <div className="bench">
        {BOARDS.map((board) => (
          <Board key={board.title} {...board} />
        ))}
      </div>
    </>
  );
}

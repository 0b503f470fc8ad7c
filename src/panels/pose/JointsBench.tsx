import { LevaPanel, useControls, useCreateStore } from 'leva';
import type { JointId } from '../../model/joints';
import { benchTheme, joint } from './benchPlugin';
import { JOINTS_BENCH } from '../../words/setUp/setUp';

/** Sixteen degrees of freedom, by what a coach would ask for. */
const BOARDS: readonly { readonly title: string; readonly ids: readonly JointId[] }[] = [
  { title: 'Hands and wrist', ids: ['leadWristFlexion', 'leadWristRadial', 'leadArmRoll'] },
  { title: 'Turn and slide', ids: ['thoraxTurn', 'pelvisTurn', 'pelvisSway', 'pelvisThrust'] },
  { title: 'Posture', ids: ['trunkBend', 'trunkTilt', 'pelvisBend', 'pelvisSideTilt', 'pelvisHeight'] },
  { title: 'Arm and shoulders', ids: ['leadArmElevation', 'leadArmAdduction', 'leadProtraction', 'trailProtraction'] },
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
      <p className="fine">{JOINTS_BENCH}</p>
      <div className="bench">
        {BOARDS.map((board) => (
          <Board key={board.title} {...board} />
        ))}
      </div>
    </>
  );
}

import type { CameraView } from '../../reading/camera/camera';
import { desk, setCamera, useDerived } from '../../store';
import { COMPUTED, EXAGGERATED } from '../../words';
import { useCameraWords, type CameraRow } from './SetUpCameraWords';
import { capital } from '../../words/numbers/capital';

/** One sentence: how far this camera bends what is read, and why. */
export function CameraLead({ view }: { view: CameraView }) {
  const { lead, notes } = useCameraWords(view);
  return (
    <output className="camera-lead">
      <span>{lead}</span>
      {notes.map((note) => (
        <span key={note} className="camera-note">
          {note}
        </span>
      ))}
    </output>
  );
}

/** The readings side by side, and how the camera is mended. */
export function CameraReadings({ view }: { view: CameraView }) {
  const { rows, mend, better } = useCameraWords(view);
  const move = (): void => {
    if (!better) return;
    const { camera } = desk.getState().document;
    const { rightCm, heightM } = better;
    setCamera({ ...camera, downTheLine: { ...camera.downTheLine, rightCm, heightM } });
  };
  return (
    <>
      {rows.length > 0 && <Rows rows={rows} />}
      {mend.length > 0 && (
        <div className="camera-mend">
          <p>{mend.join(' ')}</p>
          {better && (
            <button type="button" className="plain wide" onClick={move}>
              Move it there
            </button>
          )}
        </div>
      )}
    </>
  );
}

function Rows({ rows }: { rows: readonly CameraRow[] }) {
  const exaggerated = useDerived((derived) => derived.exaggerated);
  return (
    <table className="camera-rows">
      <thead>
        <tr>
          <th scope="col">
            {capital(COMPUTED)}
            {exaggerated && `, ${EXAGGERATED}`}
          </th>
          <th scope="col">It is</th>
          <th scope="col">Camera reads</th>
          <th scope="col">Bent</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, own, seen, bend }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{own}</td>
            <td>{seen}</td>
            <td>
              <b>{bend}</b>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

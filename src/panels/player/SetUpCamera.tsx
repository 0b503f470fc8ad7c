import { useState } from 'react';
import type { CameraView } from '../../reading/camera/camera';
import { CAMERA_LIMITS, setCamera, USUAL_CAMERAS, useDesk, type CameraPlace } from '../../store';
import { LENGTHS, TRIPOD_UNITS } from '../../words';
import { Choice } from '../fields/Choice';
import { holdKey, holdPointer } from '../dials/gesture';
import { outside } from '../../words/numbers/ranges';
import { NumberField } from '../fields/NumberField';
import { CameraLead, CameraReadings } from './SetUpCameraAnswer';
import { SetUpCameraPlan } from './SetUpCameraPlan';
import { CAMERA_SOURCE } from '../../words/setUp/setUp';
import './SetUpCamera.css';

const VIEWS = [
  { value: 'downTheLine', text: 'Down the line' },
  { value: 'faceOn', text: 'Face on' },
] as const;

const LABELS: Readonly<Record<CameraView, Readonly<Record<keyof CameraPlace, string>>>> = {
  downTheLine: {
    distanceM: 'Behind the hands',
    heightM: 'Camera height',
    rightCm: 'Right of the hand line',
    aimRightDeg: 'Aimed right of the hands',
    clockwiseDeg: 'Tilted clockwise',
    fieldDeg: 'Field of view, upright',
  },
  faceOn: {
    distanceM: 'In front of the ball line',
    heightM: 'Camera height',
    rightCm: 'Right of the stance',
    aimRightDeg: 'Aimed right of the hands',
    clockwiseDeg: 'Tilted clockwise',
    fieldDeg: 'Field of view, upright',
  },
};
const FIELDS = ['distanceM', 'heightM', 'rightCm', 'aimRightDeg', 'clockwiseDeg', 'fieldDeg'] as const;

/** Where a camera stands, its numbers to be typed. Left, and the other way round, are minus. */
function Tripod({ view }: { view: CameraView }) {
  const camera = useDesk(({ document }) => document.camera);
  const length = useDesk(({ document }) => document.units.length);
  const place = camera[view];
  const put = (part: Partial<CameraPlace>): void => setCamera({ ...camera, [view]: { ...place, ...part } });
  const unitOf = (id: keyof CameraPlace): { symbol: string; size: number; decimals: number } => {
    const { symbol, metres, decimals } = TRIPOD_UNITS[length];
    if (id === 'distanceM' || id === 'heightM') return { symbol, size: metres, decimals };
    if (id === 'rightCm') return { symbol: LENGTHS[length].symbol, size: LENGTHS[length].metres * 100, decimals: 1 };
    return { symbol: '°', size: 1, decimals: 1 };
  };
  return (
    <div className="fields">
      {FIELDS.map((id) => {
        const { symbol, size, decimals } = unitOf(id);
        const { min, max } = CAMERA_LIMITS[id];
        const label = LABELS[view][id];
        const take = (typed: number | undefined): string | undefined => {
          const problem = outside(label, typed!, min / size, max / size, symbol, decimals);
          if (problem === undefined) put({ [id]: Number((typed! * size).toFixed(4)) });
          return problem;
        };
        return (
          <NumberField
            key={id}
            label={label}
            unit={symbol}
            decimals={decimals}
            value={place[id] / size}
            onTake={take}
          />
        );
      })}
    </div>
  );
}

/** Aside is what is wrong most often: a slider, so that the answer can be watched while the camera moves. */
function Sideways({ view }: { view: CameraView }) {
  const camera = useDesk(({ document }) => document.camera);
  const length = useDesk(({ document }) => document.units.length);
  const { rightCm } = camera[view];
  const { min, max } = CAMERA_LIMITS.rightCm;
  const { metres, decimals, symbol } = LENGTHS[length];
  const size = Math.abs(rightCm / (metres * 100)).toFixed(decimals);
  const way = rightCm === 0 ? 'on the line' : `${size} ${symbol} ${rightCm < 0 ? 'left' : 'right'}`;
  return (
    <div className="field field-slider">
      <label htmlFor="camera-aside">Camera position</label>
      <input
        id="camera-aside"
        type="range"
        min={min}
        max={max}
        step={1}
        value={rightCm}
        aria-valuetext={way}
        onPointerDown={holdPointer}
        onKeyDown={holdKey}
        onChange={({ currentTarget }) =>
          setCamera({ ...camera, [view]: { ...camera[view], rightCm: currentTarget.valueAsNumber } })
        }
      />
      <output htmlFor="camera-aside">{way}</output>
    </div>
  );
}

/** Where the coach's own cameras stand, and how far they bend what is read off their pictures. */
export function SetUpCamera() {
  const [view, setView] = useState<CameraView>('downTheLine');
  const isUsual = useDesk(({ document }) => document.camera[view] === USUAL_CAMERAS[view]);
  const camera = useDesk(({ document }) => document.camera);
  return (
    <section aria-labelledby="set-up-camera" className="camera">
      <h3 id="set-up-camera" className="unseen">
        Camera
      </h3>
      <div className="camera-head">
        <div>
          <Choice label="It films" isPlain value={view} options={VIEWS} onChoose={setView} />
          <CameraLead view={view} />
        </div>
        <SetUpCameraPlan view={view} />
      </div>
      <Sideways view={view} />
      <CameraReadings view={view} />
      <details>
        <summary>Its place in numbers</summary>
        <p className="fine">{CAMERA_SOURCE}</p>
        <Tripod view={view} />
      </details>
      {!isUsual && (
        <button
          type="button"
          className="text-button"
          onClick={() => setCamera({ ...camera, [view]: USUAL_CAMERAS[view] })}
        >
          Back to the usual place
        </button>
      )}
    </section>
  );
}

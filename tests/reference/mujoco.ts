import loadMujoco, { type MjData, type MjModel } from '@mujoco/mujoco';
import { toMjcf, type Measures } from './mjcf';

const mujoco = await loadMujoco();

/** Kinds of object as MuJoCo numbers them (mjOBJ_BODY, mjOBJ_JOINT, mjOBJ_SITE). */
const BODY = 1;
const JOINT = 3;
const SITE = 6;

/** A golfer in MuJoCo: joints by name, points and axes by name. Angles in radians, lengths in metres. */
export interface MujocoGolfer {
  setJoint(name: string, value: number): void;
  solve(): void;
  bodyAt(name: string): number[];
  siteAt(name: string): number[];
  /** Axis 0, 1 or 2 of a body in the world. */
  bodyAxis(name: string, axis: 0 | 1 | 2): number[];
  siteAxis(name: string, axis: 0 | 1 | 2): number[];
  /** The qpos buffer itself and the address of a joint in it, for timing. */
  readonly qpos: Float64Array;
  addressOf(name: string): number;
  free(): void;
}

/** An empty call into the library: what crossing the border costs by itself. */
export const crossBorder = (): number => mujoco.mj_version();

export function createMujocoGolfer(measures: Measures): MujocoGolfer {
  const model: MjModel = mujoco.MjModel.from_xml_string(toMjcf(measures));
  const data: MjData = new mujoco.MjData(model);
  const qpos = data.qpos as Float64Array;
  const idOf = (kind: number, name: string): number => {
    const id = mujoco.mj_name2id(model, kind, name);
    if (id < 0) throw new Error(`The MJCF has no "${name}".`);
    return id;
  };
  const three = (array: unknown, at: number, step: number): number[] =>
    [0, 1, 2].map((i) => (array as Float64Array)[at + i * step]);
  const addressOf = (name: string): number => (model.jnt_qposadr as Int32Array)[idOf(JOINT, name)];
  return {
    qpos,
    addressOf,
    setJoint: (name, value) => {
      qpos[addressOf(name)] = value;
    },
    solve: () => mujoco.mj_kinematics(model, data),
    bodyAt: (name) => three(data.xpos, 3 * idOf(BODY, name), 1),
    siteAt: (name) => three(data.site_xpos, 3 * idOf(SITE, name), 1),
    // Matrices are row by row: an axis is a column.
    bodyAxis: (name, axis) => three(data.xmat, 9 * idOf(BODY, name) + axis, 3),
    siteAxis: (name, axis) => three(data.site_xmat, 9 * idOf(SITE, name) + axis, 3),
    free: () => {
      data.delete();
      model.delete();
    },
  };
}

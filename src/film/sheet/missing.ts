import type { AddressMarks, FrameMarks, TypedCamera } from '../marks';

/** What is still missing. `direction`: where the target is. `level`: how high the camera stands. */
export type MissingMark =
  | { readonly at: 'address'; readonly what: 'clubHead' | 'gripEnd' | 'direction' | 'level' }
  | {
      readonly at: 'leadArmParallel' | 'shaftParallel';
      readonly what: 'hands' | 'clubHead' | 'trailShoulder' | 'trailElbow' | 'second';
    };

/** What the camera cannot be found without. */
export function findMissingForCamera(address: Partial<AddressMarks>, camera: TypedCamera = {}): readonly MissingMark[] {
  const missing: MissingMark[] = [];
  for (const what of ['clubHead', 'gripEnd'] as const) if (!address[what]) missing.push({ at: 'address', what });
  const hasFeet = address.trailToe && address.leadToe;
  if (!address.stick && !address.target && !hasFeet && !(camera.distance && camera.sideways)) {
    missing.push({ at: 'address', what: 'direction' });
  }
  if (!address.horizon && !camera.height && !hasFeet) missing.push({ at: 'address', what: 'level' });
  return missing;
}

/** What a frame at a checkpoint cannot be read without. */
export function findMissingInFrame(
  at: 'leadArmParallel' | 'shaftParallel',
  frame: Partial<FrameMarks> | undefined,
): readonly MissingMark[] {
  const needed =
    at === 'leadArmParallel'
      ? (['hands', 'clubHead', 'trailShoulder', 'trailElbow'] as const)
      : (['hands', 'clubHead'] as const);
  return needed.filter((what) => !frame?.[what]).map((what) => ({ at, what }));
}

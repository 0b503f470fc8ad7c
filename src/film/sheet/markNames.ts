/** What a frame of a film is marked as. `next`: the frame after shaft parallel. */
export type PlaceId = 'address' | 'arm' | 'shaft' | 'next';
export const PLACE_IDS: readonly PlaceId[] = ['address', 'arm', 'shaft', 'next'];

const CHECKPOINT_MARKS = [
  'hands',
  'clubHead',
  'trailShoulder',
  'trailElbow',
  'leadShoulder',
  'leadElbow',
  'midHip',
  'neck',
  'ball',
  'leadToe',
  'stickA',
] as const;

/** Names of the marks that each place may carry, as they are kept. */
export const MARK_NAMES: Readonly<Record<PlaceId, readonly string[]>> = {
  address: [
    'clubHead',
    'gripEnd',
    'stickA',
    'stickB',
    'trailToe',
    'leadToe',
    'horizonA',
    'horizonB',
    'target',
    'uprightA',
    'uprightB',
    'ball',
  ],
  arm: CHECKPOINT_MARKS,
  shaft: CHECKPOINT_MARKS,
  next: CHECKPOINT_MARKS,
};

import { createStore } from 'zustand/vanilla';
import type { PinId } from '../../scene/figure/jointPins';
import type { DialId } from '../../store';

/** The dial that each pin moves: the typed way of the same. */
export const DIAL_OF: Readonly<Record<PinId, DialId>> = {
  leadWrist: 'leadWristFlexion',
  chest: 'rotationRate',
  shoulderLine: 'trailSideBend',
};

/** Which pin a pointer holds. Belongs to the picture alone. */
export const pinStore = createStore<{ readonly held: PinId | undefined }>(() => ({ held: undefined }));

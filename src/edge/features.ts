import { rad } from '../math/angle';
import { DIALS } from '../model/movements';
import type { FeatureId } from '../solving/rule/features';

/** Name of a feature at an edge, and one unit of it there in the model's units. */
interface EdgeFeature {
  readonly field: string;
  readonly unit: number;
}

const CM = 0.01;
const OTHERS: Readonly<Record<string, EdgeFeature>> = {
  stature: { field: 'statureM', unit: 1 },
  clubLength: { field: 'clubLengthM', unit: 1 },
  lag: { field: 'lagDeg', unit: rad(1) },
  handDepth: { field: 'handDepthCm', unit: CM },
  handHeight: { field: 'handHeightCm', unit: CM },
  turn: { field: 'turnDeg', unit: rad(1) },
  wristSet: { field: 'wristSetDeg', unit: rad(1) },
  bicepGap: { field: 'bicepGapCm', unit: CM },
  headDepth: { field: 'headDepthCm', unit: CM },
  chestTurn: { field: 'thoraxTurnDeg', unit: rad(1) },
  pelvisTurn: { field: 'pelvisTurnDeg', unit: rad(1) },
};

/** How a feature that splits trials is called at an edge, and its unit there: metres, degrees, centimetres, milliseconds, factor. */
export function featureAtEdge(id: FeatureId): EdgeFeature {
  const dial = DIALS.find((one) => one.id === id);
  return dial ? { field: dial.field, unit: dial.edgeUnit } : OTHERS[id];
}

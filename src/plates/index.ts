export { PairPlates } from './PairPlates';
export { Plate } from './Plate';
export { ShotPlan } from './ShotPlan';
export { Strike } from './Strike';

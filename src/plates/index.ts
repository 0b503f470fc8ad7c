export { Plate } from './plate/Plate';

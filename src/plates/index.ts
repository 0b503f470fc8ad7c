export { Plate } from './Plate';

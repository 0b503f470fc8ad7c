import { preloadable } from '../loading/preloadable';

/** Far down in the set-up, and much of it: fetched when it is quiet. */
export const CAMERA = preloadable(async () => ({ default: (await import('./SetUpCamera')).SetUpCamera }));

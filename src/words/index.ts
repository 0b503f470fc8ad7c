/** The one place for sentences, labels and number formats: plates, panels, screen reader and sheets all speak through it. */
export * from './swing/camera';
export * from './swing/checkpoint';
export * from './swing/delivery';
export * from './swing/dials';
export * from './numbers/distances';
export * from './numbers/judged';
export * from './numbers/numbers';
export * from './why/practice';
export * from './swing/shot';
export * from './showing/showing';
export * from './swing/status';
export * from './numbers/units';

/** The one place for sentences, labels and number formats: plates, panels, screen reader and sheets all speak through it. */
export * from './camera';
export * from './checkpoint';
export * from './delivery';
export * from './dials';
export * from './distances';
export * from './judged';
export * from './numbers';
export * from './practice';
export * from './shot';
export * from './showing';
export * from './status';
export * from './units';

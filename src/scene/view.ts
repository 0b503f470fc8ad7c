export * from '../stage/view';

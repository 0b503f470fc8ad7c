export * from '../stage/solids';

export * from '../stage/theme';

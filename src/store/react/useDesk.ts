import { useStore } from 'zustand';
import { derive, desk } from '../desk/desk';
import type { Derived } from '../derive/derived';
import type { DeskState } from '../desk/state';

/** Part of the desk for React. Select one primitive or one stable object. */
export const useDesk = <T>(select: (state: DeskState) => T): T => useStore(desk, select);

/** Part of what is worked out from the desk, for React. Select one primitive or one stable object. */
export const useDerived = <T>(select: (derived: Derived, state: DeskState) => T): T =>
  useStore(desk, (state) => select(derive(state), state));

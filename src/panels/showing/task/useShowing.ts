import { useStore } from 'zustand';
import { showing, type ShowingState } from './showingStore';

/** Part of the drawer's state for React. Select one primitive or one stable object. */
export const useShowing = <T>(select: (state: ShowingState) => T): T => useStore(showing, select);

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { book, type BookState } from '../../record';

/** The page of the book that lies open. Not kept over a reload. */
export type Place =
  | { readonly page: 'players' | 'backup' | 'device' | 'practice' }
  | { readonly page: 'player' | 'lesson' | 'progress'; readonly id: string };

interface PlaceState {
  readonly place: Place;
  readonly search: string;
  readonly sortBy: 'name' | 'lastLesson';
  readonly withArchived: boolean;
  /** What came of the last thing done, in words; gone with the next page. */
  readonly said: string | null;
}

/** Which page of the lesson book is open, how its list is sorted and searched. Kept while the drawer is closed. */
export const navigation = createStore<PlaceState>(() => ({
  place: { page: 'players' },
  search: '',
  sortBy: 'name',
  withArchived: false,
  said: null,
}));

/** Part of the navigation for React. */
export const useNavigation = <T>(select: (state: PlaceState) => T): T => useStore(navigation, select);

/** Opens a page of the lesson book; `said` is read out there. */
export const goTo = (place: Place, said: string | null = null): void => navigation.setState({ place, said });

/** Part of the lesson book for React. Select one primitive or one stable object. */
export const useBook = <T>(select: (state: BookState) => T): T => useStore(book.state, select);

/** Whether this tab may write. */
export const useMayWrite = (): boolean => useBook(({ mode }) => mode === 'writing' || mode === 'apart');

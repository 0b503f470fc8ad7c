import { goTo, setPlace } from '../filmActions';
import type { PlaceId } from '../filmMarks';
import { filmStore } from '../filmStore';

/** Pictures are usually chosen in the order in which they were taken. */
const IN_ORDER: readonly PlaceId[] = ['address', 'arm', 'shaft'];

/** Shows a picture as what it was marked as; one without marks as the next place that is not yet marked. */
export function goToPicture(index: number): void {
  const { sheet } = filmStore.getState();
  const own = IN_ORDER.find((place) => sheet[place]?.frame === index);
  const place = own ?? (sheet[IN_ORDER[index]] ? IN_ORDER.find((one) => !sheet[one]) : IN_ORDER[index]);
  void goTo(index);
  setPlace(place ?? filmStore.getState().place);
}

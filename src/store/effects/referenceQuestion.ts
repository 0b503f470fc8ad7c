import type { Body } from '../../model/body';
import type { Club } from '../../model/club';

/** What the worker that looks for reference swings is asked. A fit comes back. */
export interface ReferenceQuestion {
  readonly body: Body;
  readonly club: Club;
}

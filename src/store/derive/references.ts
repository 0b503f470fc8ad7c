import type { Body } from '../../model/body';
import type { Club } from '../../model/club';
import type { ReferenceSwing } from '../../model/keys';

/** What came of a search for a reference swing; `failed` says in words why there is none. */
export type Found = { readonly reference: ReferenceSwing } | { readonly failed: string };

/** What searches have found, by `referenceKey`. The usual player's are at hand without; any other that is not here is still being looked for. */
export type References = ReadonlyMap<string, Found>;

/** Nothing looked for yet. */
export const NO_REFERENCES: ReadonlyMap<string, Found> = new Map();

/** Tells a body with a club from every other; what the club is called makes no difference. */
export const referenceKey = (body: Body, { name: _, ...club }: Club): string => JSON.stringify([body, club]);

import type { Body } from '../model/body';
import type { Club } from '../model/club';
import type { ReferenceSwing } from '../model/keys';
import { seedReference } from '../solving/seed';

export type Found = { readonly reference: ReferenceSwing } | { readonly solving: true } | { readonly failed: string };

/** The reference swing of a body with a club, if it is known already. */
export function referenceFor(body: Body, _club: Club): Found {
  return { reference: seedReference(body) };
}

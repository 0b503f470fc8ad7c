import { change } from '../desk/actions';
import { desk } from '../desk/desk';
import type { ChosenPlan } from '../document/chosenPlan';
import { draftPlan, type PlanOffer } from './draftPlan';

const ALPHABET = '0123456789abcdefghijklmnopqrstuvwxyz';
const ID_LETTERS = 16;

/** A new plan's id: 16 random letters and digits. */
function newPlanId(): string {
  // Of 256 values the last four would make four letters likelier than the others.
  const fair = 256 - (256 % ALPHABET.length);
  let id = '';
  while (id.length < ID_LETTERS) {
    for (const byte of crypto.getRandomValues(new Uint8Array(ID_LETTERS))) {
      if (byte < fair && id.length < ID_LETTERS) id += ALPHABET[byte % ALPHABET.length];
    }
  }
  return id;
}

/** Chooses a plan for the player: one undo step. Nothing that was seen and nothing that is dialled changes. */
export function choosePlan(offer: PlanOffer, id: string = newPlanId()): void {
  change('Plan', (document) => ({ ...document, plan: draftPlan(id, offer, document.plan) }));
}

/** Changes what is said with the chosen plan. */
export function editPlan(
  label: string,
  part: Partial<Omit<ChosenPlan, 'id' | 'from' | 'movements' | 'targetCm'>>,
): void {
  if (!desk.getState().document.plan) return;
  change(label, (document) => ({ ...document, plan: document.plan && { ...document.plan, ...part } }));
}

/** No plan is chosen any more. */
export const clearPlan = (): void => change('Clear plan', (document) => ({ ...document, plan: null }));

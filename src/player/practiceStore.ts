import { useState } from 'react';
import { noPractice } from '../practice/edit';
import { mergePractice } from '../practice/merge';
import { readPractice } from '../practice/check';
import type { Practice } from '../practice/practice';
import { DAMAGED, NOT_KEPT } from '../words/player/page';

/** Each plan has a store of its own on the device. */
const keyOf = (planId: string): string => `slantwise.practice.${planId}`;

interface Kept {
  readonly practice: Practice;
  /** What is wrong with keeping it, in words. */
  readonly problem?: string;
}

function load(planId: string, drills: number): Kept {
  const fresh = noPractice(planId, drills);
  let text: string | null;
  try {
    text = localStorage.getItem(keyOf(planId));
  } catch {
    return { practice: fresh, problem: NOT_KEPT };
  }
  if (text === null) return { practice: fresh };
  try {
    const practice = readPractice(JSON.parse(text));
    // The coach may have added a drill to the plan since.
    if (practice?.planId === planId) return { practice: mergePractice(practice, fresh) };
  } catch {
    // Said below.
  }
  return { practice: fresh, problem: DAMAGED };
}

/** Puts it into the device's store; without anything done nothing is left there. Answers what went wrong, in words. */
function save(practice: Practice): Kept {
  const { planId, days, felt, words } = practice;
  try {
    if (days.length === 0 && felt.every((one) => one === null) && words === '') localStorage.removeItem(keyOf(planId));
    else localStorage.setItem(keyOf(planId), JSON.stringify(practice));
    return { practice };
  } catch {
    return { practice, problem: NOT_KEPT };
  }
}

/** What was practised of a plan, kept on this device with every change. */
export function usePractice(planId: string, drills: number) {
  const [kept, setKept] = useState(() => load(planId, drills));
  const change = (by: (practice: Practice) => Practice): void => setKept(({ practice }) => save(by(practice)));
  return { ...kept, change };
}

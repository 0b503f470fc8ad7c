/** "For Juniper, from Coach Rowan"; names stand only where the coach put them in. */
export function sayFor({ player, coach }: { readonly player: string | null; readonly coach: string | null }): string {
  const sender = coach ?? 'your coach';
  return player ? `For ${player}, from ${sender}` : `From ${sender}`;
}

export const FINDING_SWING = 'Finding this player’s swing …';

export const CHILDREN = 'Children: with an adult beside them.';

export const LAST_WORDS =
  'Illustration from a model, not a recording. Feel and drills: rules of thumb. What you tick stays on this device.';

/** Of the last seven days. */
export const sayPractised = (days: number): string => `${days} of 7 days`;

/** One day of the week, read out. */
export const sayTicked = (date: string, isPractised: boolean): string =>
  `${date}: ${isPractised ? 'practised' : 'nothing ticked'}`;

/** Names a drill's counter. */
export const sayRepetitions = (drill: string): string => `Repetitions today: ${drill}`;

export const SAVE_REMINDERS = 'Save reminders for my calendar, daily at 18:00';

/** What a reminder is called in the calendar. */
export const REMINDER = 'Swing practice';

export const WIPES = 'Ticks, counts and answers of this plan go.';

/** On what goes back to the coach. */
export const SEND_BACK = {
  carries: 'It carries days, counts, your answers and this line, no name. Nothing is sent by itself.',
  code: 'Code with your practice, for your coach’s camera',
  copied: 'Copied.',
  notCopied: 'This browser does not let pages copy. Save it as a file instead.',
} as const;

export const NOT_KEPT = 'This browser keeps nothing. What you tick stays until the page closes.';

export const DAMAGED = 'What was ticked before cannot be read. It is left where it is until you tick something.';

export const NOTHING_LEAVES = 'What leaves this device: nothing.';

export const NO_ACCOUNT =
  'No account, no measuring of use, no server. Files you save yourself are yours to keep or to pass on.';

export const ONE_FILE =
  'One file holds every player, lesson and swing. Keep it where only you can read it: it is about people.';

export const TAKEN = 'Taken over from the file. Undo takes it back.';

export const FILE_NOT_OPENED = 'This file could not be opened. Nothing was taken.';

export const OPENING_BOOK = 'Opening the lesson book …';

export const OTHER_TAB = 'Another tab writes the lesson book. Here you can read.';

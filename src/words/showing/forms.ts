export const SHEET_HOLDS =
  'One page: plates before and after, what to feel, drills to tick off, and a code for the phone.';

export const FILES_CARRY = 'Pictures, clips and models carry the swing: drop one on this page, or open it here.';

export const OWN_LOOK_KEPT = 'Kept on this device only, and drawn on clips and stills.';

export const MARK_NOT_READ = 'This picture could not be read.';

export const NO_SHOT_LEFT = 'Both shots are left out. Choose a camera for one of them.';

export const NO_SWING_YET = 'There is no swing to show yet. Finish the set-up first.';

export const NOT_SHARED = 'This device did not take the file. Save it instead.';

export const LINK_CHOSEN = 'Chosen: copy it with the keys or the menu of your device.';

export const SHEET_HOLDS =
  'One page: plates before and after, what to feel, drills to tick off, and a code for the phone.';

export const FILES_CARRY = 'Pictures, clips and models carry the swing: drop one on this page, or open it here.';

export const OWN_LOOK_KEPT = 'Drawn on clips and stills. Kept on this device, and saved with everything.';

/** Of the coach's own look in a file that saved everything. */
export const LOOK_IN_FILE = 'Your own colour and mark are in this file.';
export const LOOK_IS_HERE = 'Your own colour and mark are here as in the file.';
export const LOOK_DAMAGED = 'The mark in this file is damaged. Choose your picture again under Show and send.';

export const MARK_NOT_READ = 'This picture could not be read.';

export const NO_SHOT_LEFT = 'Both shots are left out. Choose a camera for one of them.';

export const NO_SWING_YET = 'There is no swing to show yet. Finish the set-up first.';

export const NOT_SHARED = 'This device did not take the file. Save it instead.';

export const LINK_CHOSEN = 'Chosen: copy it with the keys or the menu of your device.';

/** Why a picture is not taken as a mark. */
export const MARK_TOO_LARGE = 'This picture is over 5 MB. Choose a smaller one.';
export const NO_MARK_PICTURE = 'This is no PNG, JPEG or WebP picture. Choose one of these.';
/** The same of a picture with too many pixels. */
export const sayMarkPixels = (width: number, height: number): string =>
  `This picture has ${width} × ${height} pixels. Choose a smaller one: at most 6000 a side, 24 million in all.`;
export const NO_ROOM_FOR_LOOK = 'This browser has no room to keep it. It is used until the page closes.';

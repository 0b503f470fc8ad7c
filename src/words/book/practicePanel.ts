export const NO_CODE = 'No code was found in this picture. Nothing was changed.';

export const NOT_OPENED = 'This file could not be opened. Nothing was changed.';

export const READING_ONLY = 'Another tab writes the lesson book. Nothing was changed.';

export const HOW_IT_COMES = 'The player’s page shows a code. It finds its lesson by the plan it belongs to.';

export const CAMERA_LOOKS_FOR = 'The camera looks for a code only. No picture is kept or sent.';

export const CAMERA_REFUSED = 'The camera was refused or is not there. Paste the code, or open a picture of it.';

export const HOLD_CODE = 'Hold the player’s code in the picture.';

export const WAITING = 'Waiting for the camera …';

export const NOTHING_BACK = 'Nothing has come back from the player yet.';

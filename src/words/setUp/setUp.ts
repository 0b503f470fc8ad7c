export const LENGTHS_SOURCE = 'Empty: from the table of body proportions, a rule of thumb. Filled: measured by you.';

export const FACE_STAYS = 'Nothing adapts now: the face stays as dialled.';

export const CAMERA_SOURCE = 'Set by you, seen from behind the camera: left and anticlockwise are minus.';

export const DOWNSWING_USUAL = 'From the top to impact. Recreational men about 250, skilled men about 310.';

export const JOINTS_BENCH = 'Every joint at this instant. Bend one: the figure shows it, the swing stays.';

/** The arm is too short for the top that was asked for. `away`: by how far, as a sentence has it. */
export const sayTopTooFar = (away: string): string => `The hands stay ${away} away from this. Ask for less.`;

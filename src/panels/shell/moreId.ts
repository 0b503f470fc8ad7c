/** The sheet of further drawers and switches. */
export const MORE_ID = 'more';

/** The text as the beginning of a sentence: its first letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The text as a part of a sentence: its first letter small. */
export const lowered = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

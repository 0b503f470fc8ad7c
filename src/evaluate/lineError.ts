/** What is wrong with a line: the field by its path (empty: the line as a whole) and a message that says what is legal. */
export class LineError extends Error {
  constructor(
    readonly field: string,
    message: string,
  ) {
    super(message);
    this.name = 'LineError';
  }
}

import { Component, type ReactNode } from 'react';
import { FRESH_SESSION, put } from '../store';

interface State {
  readonly error: Error | null;
}

/** When a drawing or a panel fails: says so in words. Starting again keeps the document and forgets the rest. */
export class Mishap extends Component<{ children: ReactNode }, State> {
  override state: State = { error: null };

  static getDerivedStateFromError(error: unknown): State {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  override render(): ReactNode {
    const { error } = this.state;
    if (!error) return this.props.children;
    const startAgain = (): void => {
      put({ session: FRESH_SESSION, gesture: null });
      this.setState({ error: null });
    };
    return (
      <main className="mishap">
        <h1>Something broke</h1>
        <p>The drawing stopped. Player, club, movements and undo steps are saved.</p>
        <button type="button" className="plain wide" onClick={startAgain}>
          Start again
        </button>
        <details>
          <summary>What happened</summary>
          <p>{error.message}</p>
        </details>
      </main>
    );
  }
}

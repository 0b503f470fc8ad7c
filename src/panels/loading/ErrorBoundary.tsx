import { Component, type ReactNode } from 'react';
import { saveEverything } from '../../record';
import { FRESH_SESSION, put } from '../../store';
import { REST_IS_SAFE } from '../../words/showing/errorMessages';
import { LoadAgain } from './LoadAgain';
import { ChunkLoadError } from '../../store/react/chunkLoadError';

interface State {
  readonly error: Error | null;
}

interface Props {
  readonly children: ReactNode;
  /** Names a part that may fail while the rest of the desk keeps working: "The picture". */
  readonly part?: string;
}

/** Shows a message in place of children that threw. "Start again" keeps the document and resets the session. */
export class ErrorBoundary extends Component<Props, State> {
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
    const { part } = this.props;
    const Place = part === undefined ? 'main' : 'section';
    const Title = part === undefined ? 'h1' : 'h2';
    const isAbsent = error instanceof ChunkLoadError;
    const title = part === undefined ? 'Something broke' : `${part} ${isAbsent ? 'did not come' : 'stopped'}`;
    return (
      <Place className="mishap" aria-label={part}>
        <Title>{title}</Title>
        <p>{REST_IS_SAFE}</p>
        {isAbsent ? (
          <LoadAgain />
        ) : (
          <button type="button" className="plain wide" onClick={startAgain}>
            Start again
          </button>
        )}{' '}
        <button type="button" className="plain wide" onClick={() => void saveEverything()}>
          Save everything
        </button>
        <details>
          <summary>What happened</summary>
          <p>{error.message}</p>
        </details>
      </Place>
    );
  }
}

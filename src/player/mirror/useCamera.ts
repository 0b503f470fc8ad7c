import { useCallback, useEffect, useRef, useState } from 'react';

export type CameraState = 'off' | 'asking' | 'on' | 'stopped' | 'lost' | 'refused' | 'none' | 'busy' | 'unable';

interface Running {
  readonly stream: MediaStream;
  /** Whether the camera looks the way the screen does. */
  readonly isFront: boolean;
}

/** Why there is no camera, by the names of the Media Capture and Streams standard (W3C). */
const REASONS: Readonly<Record<string, CameraState>> = {
  NotAllowedError: 'refused',
  SecurityError: 'refused',
  NotFoundError: 'none',
  OverconstrainedError: 'none',
  NotReadableError: 'busy',
  AbortError: 'busy',
};

const WANTED: MediaStreamConstraints = {
  audio: false,
  video: { facingMode: 'user', width: { ideal: 1280 }, height: { ideal: 720 } },
};

/** The device's camera, asked for at a tap. It ends when the page hides, when it is stopped and with the screen that uses it. */
export function useCamera() {
  const [state, setState] = useState<CameraState>('off');
  const [running, setRunning] = useState<Running>();
  const current = useRef<MediaStream>(undefined);
  /** Rises with every start and every end: an answer to an older question is not wanted any more. */
  const turn = useRef(0);

  const end = useCallback((why: CameraState): void => {
    turn.current++;
    for (const track of current.current?.getTracks() ?? []) track.stop();
    current.current = undefined;
    setRunning(undefined);
    setState(why);
  }, []);

  const start = useCallback(async (): Promise<void> => {
    const mine = ++turn.current;
    setState('asking');
    try {
      // Absent where the page did not come over a secure connection.
      if (!('mediaDevices' in navigator)) return setState('unable');
      const stream = await navigator.mediaDevices.getUserMedia(WANTED);
      if (mine !== turn.current) {
        for (const track of stream.getTracks()) track.stop();
        return;
      }
      current.current = stream;
      if (document.visibilityState === 'hidden') return end('stopped');
      const [track] = stream.getVideoTracks();
      track.addEventListener('ended', () => end('lost'), { once: true });
      setRunning({ stream, isFront: track.getSettings().facingMode !== 'environment' });
      setState('on');
    } catch (error) {
      if (mine === turn.current) setState((error instanceof Error && REASONS[error.name]) || 'unable');
    }
  }, [end]);

  useEffect(() => {
    const hide = (): void => {
      if (document.visibilityState === 'hidden' && current.current) end('stopped');
    };
    const leave = (): void => {
      if (current.current) end('stopped');
    };
    document.addEventListener('visibilitychange', hide);
    addEventListener('pagehide', leave);
    return () => {
      document.removeEventListener('visibilitychange', hide);
      removeEventListener('pagehide', leave);
      end('off');
    };
  }, [end]);

  return { state, running, start };
}

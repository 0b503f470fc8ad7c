import { useEffect, useRef, useState } from 'react';
import { readFrameCode } from './qr';
import { CAMERA_REFUSED, HOLD_CODE, WAITING } from '../../../words/book/practicePanel';

/** Between two looks at the picture, ms. */
const PAUSE_MS = 300;

interface Props {
  readonly onFound: (text: string) => void;
  readonly onClose: (problem?: string) => void;
}

/**
 * The device's camera, looked at for a code a few times a second. It is asked for when this appears, and stopped when a code is found,
 * when this goes and when the page hides. Nothing is kept.
 */
export function CodeCamera({ onFound, onClose }: Props) {
  const video = useRef<HTMLVideoElement>(null);
  const [isOn, setOn] = useState(false);
  const told = useRef({ onFound, onClose });
  useEffect(() => {
    told.current = { onFound, onClose };
  });
  useEffect(() => {
    let stream: MediaStream | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let isOver = false;
    const stop = (): void => {
      isOver = true;
      clearTimeout(timer);
      stream?.getTracks().forEach((track) => track.stop());
    };
    const look = async (): Promise<void> => {
      const found = video.current?.videoWidth ? await readFrameCode(video.current) : undefined;
      if (isOver) return;
      if (found) {
        stop();
        told.current.onFound(found);
      } else timer = setTimeout(() => void look().catch(fail), PAUSE_MS);
    };
    const fail = (): void => {
      if (isOver) return;
      stop();
      told.current.onClose(CAMERA_REFUSED);
    };
    const start = async (): Promise<void> => {
      stream = await navigator.mediaDevices.getUserMedia({
        video: { facingMode: 'environment', width: { ideal: 1280 } },
        audio: false,
      });
      // Closed while the question stood on the screen.
      if (isOver || !video.current) return stop();
      video.current.srcObject = stream;
      await video.current.play();
      video.current?.scrollIntoView({ block: 'center' });
      setOn(true);
      return look();
    };
    const hide = (): void => {
      if (document.visibilityState !== 'hidden') return;
      stop();
      told.current.onClose();
    };
    document.addEventListener('visibilitychange', hide);
    void start().catch(fail);
    return () => {
      document.removeEventListener('visibilitychange', hide);
      stop();
    };
  }, []);
  return (
    <div className="code-camera">
      <video ref={video} muted playsInline aria-label="Camera" />
      <p>{isOn ? HOLD_CODE : WAITING}</p>
      <button type="button" className="plain" onClick={() => onClose()}>
        Close the camera
      </button>
    </div>
  );
}

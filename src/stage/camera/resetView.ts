import { desk, setView } from '../../store';
import { cameraStore, forgetFree } from './cameraStore';

/**
 * Shows the whole swing again after turning, moving or pinching: from the view that was chosen by name last, or the three-quarter view.
 * What a double tap on the picture, the key Home and a button do.
 */
export function resetView(): void {
  const { home } = cameraStore.getState();
  if (home !== 'free') return setView(home);
  forgetFree();
  if (desk.getState().session.view !== 'free') setView('free');
}

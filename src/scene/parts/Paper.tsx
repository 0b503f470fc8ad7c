import { LitPaper } from '../setting/litPaper';
import { useBuilt, useScene } from './sceneContext';

/** What everything lies on. */
export function Paper() {
  const { theme } = useScene();
  const paper = useBuilt(() => new LitPaper(theme));
  return <mesh geometry={paper.geometry} material={paper.material} frustumCulled={false} renderOrder={-10} />;
}

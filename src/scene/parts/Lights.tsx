import { useState } from 'react';
import { Object3D } from 'three';
import { useScene } from './sceneContext';

/** A warm key from behind the viewer's left shoulder with a soft shadow, weak cool fill, rim from behind, paper's bounce from below. */
export function Lights() {
  const { theme } = useScene();
  const [target] = useState(() => new Object3D());
  return (
    <>
      <hemisphereLight name="sky" args={[theme.sky, theme.bounce, theme.hemisphere]} />
      {/* It shines at a place of its own, which has to stand in the scene. */}
      <primitive object={target} position={[0, 0.6, 0.2]} />
      <directionalLight
        name="key"
        args={['#fff1d8', theme.key]}
        position={[-1.7, 4.2, 1.9]}
        target={target}
        castShadow
        // Small, because it is blurred anyway: a soft edge of two centimetres, at a quarter of the work of twice the size.
        shadow-mapSize={[256, 256]}
        shadow-intensity={0.84}
        shadow-radius={1.6}
        shadow-blurSamples={8}
        shadow-bias={-0.0006}
        shadow-normalBias={0.02}
        shadow-camera-left={-1.5}
        shadow-camera-right={1.7}
        shadow-camera-top={1.75}
        shadow-camera-bottom={-1.35}
        shadow-camera-near={0.5}
        shadow-camera-far={8}
      />
      <directionalLight name="fill" args={['#e8eefc', theme.fill]} position={[3, 1.6, 2.5]} />
      <directionalLight name="rim" args={['#ffe9c4', theme.rim]} position={[1.5, 2.5, -3]} />
    </>
  );
}

import { DirectionalLight, Group, HemisphereLight } from 'three';
import type { Theme } from './theme';

/** A warm key from behind the viewer's left shoulder with a soft shadow, weak cool fill, rim from behind, paper's bounce from below. */
export class Lights {
  readonly group = new Group();
  private readonly key: DirectionalLight;

  constructor(theme: Theme) {
    const hemisphere = new HemisphereLight(theme.sky, theme.bounce, theme.hemisphere);
    this.key = new DirectionalLight('#fff1d8', theme.key);
    this.key.position.set(-1.7, 4.2, 1.9);
    this.key.target.position.set(0, 0.6, 0.2);
    this.key.castShadow = true;
    const { shadow } = this.key;
    // Small, because it is blurred anyway: a soft edge of two centimetres, at a quarter of the work of twice the size.
    shadow.mapSize.set(256, 256);
    Object.assign(shadow.camera, { left: -1.5, right: 1.7, top: 1.75, bottom: -1.35, near: 0.5, far: 8 });
    shadow.radius = 1.6;
    shadow.blurSamples = 8;
    shadow.bias = -0.0006;
    shadow.normalBias = 0.02;
    const fill = new DirectionalLight('#e8eefc', theme.fill);
    fill.position.set(3, 1.6, 2.5);
    const rim = new DirectionalLight('#ffe9c4', theme.rim);
    rim.position.set(1.5, 2.5, -3);
    this.group.add(hemisphere, this.key, this.key.target, fill, rim);
  }

  dispose(): void {
    this.key.shadow.dispose();
  }
}

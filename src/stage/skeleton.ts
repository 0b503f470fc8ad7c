import { Bone, Matrix4, Skeleton } from 'three';
import { MATRIX_SIZE } from '../figure/partIds';

/**
 * A skeleton whose bones are the placed parts of the figure. Its matrices are written straight from the placement, so a
 * new pose costs one small texture upload and no scene graph.
 */
export class PlacedSkeleton extends Skeleton {
  constructor(partCount: number) {
    const bones = Array.from({ length: partCount }, () => new Bone());
    super(
      bones,
      bones.map(() => new Matrix4()),
    );
    this.computeBoneTexture();
  }

  /** Called by the renderer each frame; the matrices are already there. */
  override update(): void {}

  /** Takes over a placement: twelve numbers a part. A hidden part shrinks to nothing. */
  place(placement: Float64Array, isHidden: (part: number) => boolean): void {
    const to = this.boneMatrices;
    if (!(to instanceof Float32Array)) return;
    for (let part = 0; part < this.bones.length; part++) {
      const from = part * MATRIX_SIZE;
      const at = part * 16;
      const size = isHidden(part) ? 0 : 1;
      for (let column = 0; column < 3; column++) {
        for (let i = 0; i < 3; i++) to[at + column * 4 + i] = placement[from + column * 3 + i] * size;
        to[at + column * 4 + 3] = 0;
      }
      for (let i = 0; i < 3; i++) to[at + 12 + i] = placement[from + 9 + i];
      to[at + 15] = 1;
    }
    if (this.boneTexture) this.boneTexture.needsUpdate = true;
  }
}

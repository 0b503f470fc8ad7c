import { MeshDepthMaterial, ShaderChunk, ShaderLib, Vector2, type Material, type WebGLRenderer } from 'three';
import { describe, expect, test } from 'vitest';
import { patchShader } from '../../src/scene/figure/patchShader';
import { createPartRows, withRigidParts } from '../../src/scene/figure/rigidPartShader';
import { SolidBatch } from '../../src/scene/figure/solidBatch';
import { Floor } from '../../src/scene/setting/floor';
import { theme } from './mountedSwing';

type Shader = Parameters<Material['onBeforeCompile']>[0];
type Stage = 'vertex' | 'fragment';

/** What becomes of one of three's own shaders, from the source that three ships. */
function compiled(material: Material, { vertexShader, fragmentShader }: (typeof ShaderLib)['physical']) {
  const shader = { vertexShader, fragmentShader, uniforms: {} } as Shader;
  material.onBeforeCompile(shader, {} as WebGLRenderer);
  return { vertex: shader.vertexShader, fragment: shader.fragmentShader, uniforms: shader.uniforms };
}

const solids = compiled(new SolidBatch(theme, new Vector2(1, 1)).surface, ShaderLib.physical);
const depth = compiled(withRigidParts(new MeshDepthMaterial(), createPartRows()), ShaderLib.depth);
const floor = compiled(new Floor(theme).material, ShaderLib.shadow);

describe.each<[string, ReturnType<typeof compiled>, readonly (readonly [Stage, string, string])[]]>([
  [
    'of the solids',
    solids,
    [
      ['vertex', 'attribute float surface;', 'the surface of a vertex'],
      ['vertex', 'vGrain = position;', 'the place that grain is drawn from'],
      ['vertex', 'attribute float part;', 'the part of a vertex'],
      ['vertex', 'objectNormal = carryNormal(objectNormal);', 'normals carried by their part'],
      ['vertex', 'vec3 shapePoint(vec3 p)', 'the least width of the club'],
      ['vertex', 'transformed = carryPoint(shapePoint(transformed));', 'places carried by their part'],
      ['fragment', 'uniform vec4 finish[7];', 'colour and roughness of each surface'],
      ['fragment', 'diffuseColor.rgb = finish[surface].rgb;', 'the colour of a surface, and grain'],
      ['fragment', 'float roughnessFactor = finish[surface].a;', 'its roughness'],
      ['fragment', 'float metalnessFactor = isMetal', 'its metalness'],
      ['fragment', 'if (!isWood) material.clearcoat = 0.;', 'oil on wood alone'],
      ['fragment', '(receiveShadow && !isBall)', 'no shadow on the ball'],
      ['fragment', 'if (isMetal) radiance +=', 'a room that metal mirrors'],
      ['fragment', 'outgoingLight += gleam', 'oil that gleams at the rim of wood'],
    ],
  ],
  [
    'of the shadow',
    depth,
    [
      ['vertex', 'attribute float part;', 'the part of a vertex'],
      ['vertex', 'objectNormal = carryNormal(objectNormal);', 'normals carried by their part'],
      ['vertex', 'transformed = carryPoint(transformed);', 'places carried by their part'],
    ],
  ],
  [
    'of the floor',
    floor,
    [
      ['vertex', 'varying vec2 vPlace;', 'the place on the floor'],
      ['vertex', 'vPlace = position.xz;', 'that place, set'],
      ['fragment', 'float squaresAt(vec2 place)', 'squares'],
      ['fragment', 'float squares = squaresAt(vPlace);', 'squares, discs and shadow laid over one another'],
    ],
  ],
])('the shader %s has, in the source that three ships,', (_, shader, replaced) => {
  test.each(replaced)('in its %s part "%s": %s', (stage, text) => {
    expect(shader[stage]).toContain(text);
  });
});

test('every place where three asks whether a shadow is received is asked about the ball too', () => {
  const asked = ShaderChunk.lights_fragment_begin.split('receiveShadow').length - 1;
  expect(asked).toBeGreaterThan(0);
  expect(solids.fragment.split('(receiveShadow && !isBall)').length - 1).toBe(asked);
});

test('a chunk that three no longer has is an error, not a picture without it', () => {
  const source = ShaderLib.physical.vertexShader;
  expect(() => patchShader(source, { '#include <begin_vertex_2>': '' })).toThrow('begin_vertex_2');
  expect(() => compiled(new Floor(theme).material, { ...ShaderLib.shadow, fragmentShader: 'void main() {}' })).toThrow(
    '#include <common>',
  );
});

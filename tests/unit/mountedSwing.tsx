import { SwingScene } from '../../src/scene/parts/SwingScene';
import { SceneFrame, type SwingShown } from '../../src/scene/sceneFrame';
import { SCENE_TOKENS, themeOf, type SceneTokens } from '../../src/scene/setting/theme';
import { mount } from './mounted';

const tokens = Object.fromEntries(SCENE_TOKENS.map((name) => [name, '#336677'])) as SceneTokens;
export const theme = themeOf('light', tokens);

/** The scene of stage and clips, without a screen. `show` draws one frame of it. */
export function mountSwing() {
  const frame = new SceneFrame();
  const mounted = mount(<SwingScene frame={frame} theme={theme} />);
  let frames = 0;
  const show = (shown: SwingShown): void => {
    frame.show(shown);
    mounted.advance(++frames);
  };
  return { ...mounted, frame, show };
}

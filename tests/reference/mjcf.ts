/**
 * The golfer and the club as an MJCF model, written by hand from the model's definition of the chain. Nothing here reads
 * the project's own tables: fractions, axes, signs and orders of rotation are typed a second time.
 *
 * Right-handed world, metres, degrees: +X toward the target, +Y up, +Z from the golfer toward the ball line. Hinges of one body turn in
 * the order in which they stand; `eulerseq="xyz"` turns about moving axes.
 */
export interface Measures {
  readonly statureM: number;
  readonly lengthM: number;
  readonly gripInsetM: number;
  readonly handGapM: number;
  readonly lieDeg: number;
  readonly loftDeg: number;
  readonly gripAngleDeg: number;
  readonly gripTurnDeg: number;
}

export const toMjcf = (m: Measures): string => {
  const trunk = 0.288 * m.statureM;
  const shoulder = 0.129 * m.statureM;
  const arm = (0.186 + 0.146 + 0.054) * m.statureM;
  const shaft = m.lengthM - m.gripInsetM;
  // The rib cage turns about the trunk's axis, then bends about its own front-back axis; the shoulders stand at the end of its own y axis.
  // The shoulder blade carries the shoulder but not the arm's directions: the second hinge takes the first one back.
  return `
<mujoco model="golfer">
  <compiler angle="degree" eulerseq="xyz"/>
  <option gravity="0 0 0"/>
  <default>
    <joint type="hinge" limited="false"/>
  </default>
  <worldbody>
    <body name="carriage">
      <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
      <joint name="pelvisSway"   type="slide" axis="1 0 0"/>
      <joint name="pelvisHeight" type="slide" axis="0 1 0"/>
      <joint name="pelvisThrust" type="slide" axis="0 0 1"/>
      <body name="pelvis">
        <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
        <joint name="pelvisSideTilt" axis="0 0 1"/>
        <joint name="pelvisBend"     axis="1 0 0"/>
        <joint name="pelvisTurn"     axis="0 1 0"/>
      </body>
      <body name="trunk">
        <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
        <joint name="trunkTilt" axis="0 0 1"/>
        <joint name="trunkBend" axis="1 0 0"/>
        <body name="ribCage">
          <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
          <joint name="thoraxTurn" axis="0 1 0"/>
          <joint name="sideBend"   axis="0 0 1"/>
          <body name="thorax" pos="0 ${trunk} 0">
          <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
          <body name="trailBlade">
            <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
            <joint name="trailProtraction" axis="0 1 0"/>
            <site name="trailShoulder" pos="${-shoulder} 0 0"/>
          </body>
          <body name="leadBlade">
            <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
            <joint name="leadProtraction" axis="0 -1 0"/>
            <body name="leadArm" pos="${shoulder} 0 0">
              <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
              <joint name="leadProtractionBack" axis="0 1 0"/>
              <joint name="leadArmAdduction"    axis="0 -1 0"/>
              <joint name="leadArmElevation"    axis="-1 0 0"/>
              <body name="hand" pos="0 0 ${arm}">
                <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
                <joint name="leadArmRoll"       axis="0 0 1"/>
                <joint name="leadWristFlexion"  axis="0 -1 0"/>
                <joint name="leadWristRadial"   axis="-1 0 0"/>
                <body name="club" euler="${-m.gripAngleDeg} 0 ${-m.gripTurnDeg}">
                  <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
                  <site name="trailGrip" pos="0 0 ${m.handGapM}"/>
                  <site name="head" pos="0 0 ${shaft}" euler="${-m.lieDeg} 0 ${m.loftDeg}"/>
                </body>
              </body>
            </body>
          </body>
          </body>
        </body>
      </body>
    </body>
  </worldbody>
</mujoco>`;
};

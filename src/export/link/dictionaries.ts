/** Part of format version 1: never change it, existing links depend on it. */
export const DICTIONARY_1 =
  '"segmentsM":{"upperArm":0."forearm":0."hand":0."trunk":0."thigh":0."shank":0."my":{"name":"my club","kind":"driver","wood","iron","wedge",' +
  '"gripInsetM":0.1,"handGapM":0.085,"gripAngleDeg":52,"gripTurnDeg":0}"pelvis":{"rate":1.,"delayMs":-1.5-wood5-iron9-iron"pitching wedge"sand wedge' +
  '"handed":"left""length":"in","speed":"km/h""mph""dark""nothing adapts""seen":{"leadArmParallel":{"valueCm":,"plusMinusCm":' +
  '{"version":1,"player":{"statureM":1.78,"handed":"right"},"club":{"id":"7-iron","my":null},"movements":{"leadWristFlexionDeg":0,' +
  '"rotationRate":1,"rotationDelayMs":0,"trailTiltDeg":0,"pelvisShiftCm":0,"pelvis":null},"setUp":{"handDepthCm":0,"handHeightCm":0,' +
  '"turnDeg":0,"wristSetDeg":0,"downswingMs":250},"bands":{"leadArmParallel":{"lowCm":-1.5,"highCm":1.5},"shaftParallel":{"lowCm":-10,' +
  '"highCm":2}},"checkpointArmDeg":-10,"ball":{"rule":"held plane","tailWindMps":0,"crossWindMps":0,"altitudeM":0},' +
  '"units":{"length":"cm","speed":"m/s"},"board":"light","seen":{"leadArmParallel":null,"shaftParallel":null}}';

/**
 * Part of format version 2: what version 2 adds to version 1, words of feels, drills and cautions as they were then. Never change it, existing
 * links depend on it; words that are new since only make links longer.
 */
export const DICTIONARY_2 =
  'Stop short of the end of the wrist\u2019s range.' +
  'Bend and turn the back only as far as it goes easily.' +
  'Keep the knees over the feet while the hips turn.' +
  'Feel the lead knuckles look at the ground long before the arm is parallel.' +
  'Ruler on the wrist' +
  '10 slow rehearsals, 5 balls, twice' +
  'Tuck a ruler under the watch strap, over the back of the hand.' +
  'From the top, press it against the hand until the arm is parallel.' +
  '8 times without a ball, 4 with' +
  'Stop where the lead arm is parallel to the ground.' +
  'Turn the knuckles down, look at the shaft, then swing through.' +
  'Lead hand alone' +
  '10 half swings with a short iron' +
  'Hold the club in the lead hand only.' +
  'Swing hip to hip and keep the back of the wrist bowed.' +
  'Feel the lead hand bent back as if it carried a small tray.' +
  'Tray in the lead hand' +
  'From the top, let the back of the lead hand tip toward the forearm.' +
  'Stop at lead arm parallel and check that a crease shows.' +
  'Stop at lead arm parallel in front of a mirror.' +
  'See a crease at the back of the wrist, then go on.' +
  'Feel the chest race past the ball before the arms have started.' +
  '10 swings without a ball, 5 with' +
  'Start with the feet together, step toward the target from the top.' +
  'Turn belt and chest open as the foot lands.' +
  'Arms on the chest' +
  '15 turns, slow to quick' +
  'Cross the arms on the chest and take the golf posture.' +
  'Turn from the top until the belt faces the target.' +
  'Feel as if you do not turn at all until the arms are down.' +
  'Back to the target' +
  'From the top, lower the arms and keep the chest where it is.' +
  'Stop at lead arm parallel: the chest still looks behind the ball.' +
  'Set the trail heel against a wall or a bag.' +
  'Swing down and keep the heel on it until the arm is parallel.' +
  '10 balls at half speed' +
  'Say one while the arms drop, two while the body turns.' +
  'Feel the arms fall all the way before the belt moves at all.' +
  'Pause at the top' +
  'Hold the top for a full second.' +
  'Let the arms start, and the belt follow.' +
  '8 times, a ball on the last pump' +
  'Lower the arms to parallel and lift them again, twice, without turning.' +
  'On the third, turn through and hit.' +
  'Feel the belt start back to the target while the club still goes up.' +
  'Bump before the top' +
  'Make the backswing slowly.' +
  'Start the lead hip round before the hands have stopped.' +
  'Feet together, step early' +
  '8 balls at half speed' +
  'Start with the feet together.' +
  'Step while the club is still going back, then swing.' +
  'Feel the trail shoulder go under the chin and the ear stay behind the ball.' +
  'Shoulder under' +
  'Lean a spare club from the lead hip up the breastbone.' +
  'From the top, tip its upper end away from the target.' +
  'Hand down the leg' +
  '12 times without a club' +
  'Take the posture, trail hand on the trail thigh.' +
  'Start down and let that hand slide toward the knee.' +
  'Feel the breastbone stay on top of the ball and the shoulders turn level.' +
  'Chest over the ball' +
  'Let a buttoned shirt, or a spare club, hang over the ball.' +
  'Start down and keep it there until the arm is parallel.' +
  'Level shoulders' +
  '12 turns without a club' +
  'Hold a club across the shoulders.' +
  'Turn down from the top without dipping its trail end.' +
  'Feel the lead hip push into a wall on the target side.' +
  'Hip to the wall' +
  'Stand a hand\u2019s width from a bag on the target side.' +
  'From the top, touch it with the lead hip, then turn.' +
  'Step toward the target' +
  'Lift the lead foot in the backswing.' +
  'Put it down again, a little nearer the target, then swing.' +
  'Feel the belt buckle stay over the trail foot while the arms come down.' +
  'Bag beside the hip' +
  'Stand so that the lead hip just clears a bag.' +
  'Start down and turn without touching it.' +
  'Lead foot back' +
  'Draw the lead foot back by half its length.' +
  'Turn in place: the weight may come later.' +
  "Children, and players with back or wrist trouble: only with a professional's advice." +
  'Nobody stands within swinging distance.' +
  '"plan":{"id":"","from":{"leadWristFlexionDeg":-,"rotationRate":1,"rotationDelayMs":0,"trailSideBendDeg":0,"pelvisShiftCm":0,"pelvis":null},' +
  '"movements":{"leadWristFlexionDeg":0,"rotationRate":1,"rotationDelayMs":0,"trailSideBendDeg":0,"pelvisShiftCm":0,"pelvis":null},' +
  '"targetCm":{"leadArmParallel":null,"shaftParallel":-},"feel":"","drills":[{"name":"","how":"","often":""},{"name":"' +
  '"}],"cautions":["",""],"words":"","nextDate":"202' +
  '-12-","names":{"player":null,"coach":null}}' +
  ',"from":"eye"}"typed""plate""film"' +
  DICTIONARY_1;

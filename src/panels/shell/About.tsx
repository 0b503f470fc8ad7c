import { CAUTIONS } from '../../words';
import { CALIBRATED, FROM_PLANE_TO_PATH, PREDICTED, THE_BALL, THE_FILM } from '../../words/about/model';

/** What the model is, where its numbers come from, how far to trust them, and the usual cautions. */
const About = () => (
  <div className="about">
    <p className="about-lead">
      Slantwise moves a jointed figure by the rules of geometry. It shows what a change does; it does not film anybody.
    </p>

    <h3>Where each number comes from</h3>
    <dl>
      <dt>Measured by you</dt>
      <dd>Height, body lengths, your own club. The model takes them as typed.</dd>
      <dt>Computed by the model</dt>
      <dd>Every pose, distance, angle, path and speed. They follow from the joints, nothing else.</dd>
      <dt>A rule of thumb</dt>
      <dd>The bands for steep, on plane and over-shallow, usual ranges, body proportions, typical clubs.</dd>
    </dl>

    <h3>Calibrated</h3>
    <ul>
      {CALIBRATED.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
    <h3>Predicted</h3>
    <ul>
      {PREDICTED.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>

    <h3>From the plane to the path</h3>
    <ul>
      {FROM_PLANE_TO_PATH.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
    <h3>The ball</h3>
    <ul>
      {THE_BALL.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
    <h3>A player's film</h3>
    <ul>
      {THE_FILM.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>

    <h3>How far to trust it</h3>
    <ul>
      <li>Trust the direction of a change. Trust its size less: players differ.</li>
      <li>The verdict bands are common practice without a published source. Change them in Set-up.</li>
      <li>Joint angles at both checkpoints are interpolated; no published measurements were found.</li>
      <li>
        Legs, neck and feet are drawn to look right. They enter no number; measured legs set how high the pelvis stands.
      </li>
      <li>No muscles, no shaft bending, no ground forces.</li>
      <li>A badly placed camera bends what you see; the plates are free of that. Set-up tells how far.</li>
    </ul>

    <h3>Care for the body</h3>
    <ul>
      {CAUTIONS.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
    <p className="fine">Slantwise gives no risk score: the evidence does not support one.</p>

    <h3>Your data</h3>
    <p>Everything stays in this browser. There is no account, and nothing is sent anywhere.</p>
  </div>
);

export default About;

import { Fragment } from 'react';
import { CAUTIONS } from '../../words';
import {
  ABOUT_LEAD,
  CALIBRATED,
  FROM_PLANE_TO_PATH,
  NO_RISK_SCORE,
  PREDICTED,
  SOURCES,
  THE_BALL,
  THE_FILM,
  TRUST,
  YOUR_DATA,
} from '../../words/about/model';

/** What the model is, where its numbers come from, how far to trust them, and the usual cautions. */
const About = () => (
  <div className="about">
    <p className="about-lead">{ABOUT_LEAD}</p>

    <h3>Where each number comes from</h3>
    <dl>
      {SOURCES.map(({ name, of }) => (
        <Fragment key={name}>
          <dt>{name}</dt>
          <dd>{of}</dd>
        </Fragment>
      ))}
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
      {TRUST.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>

    <h3>Care for the body</h3>
    <ul>
      {CAUTIONS.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
    <p className="fine">{NO_RISK_SCORE}</p>

    <h3>Your data</h3>
    <p>{YOUR_DATA}</p>
  </div>
);

export default About;

import type { Patterns as Ids } from './shapes';

/** What a plate is patterned with: hatched where the shaft is steep, dotted where it is over-shallow. */
export const Patterns = ({ hatch, dots }: Ids) => (
  <defs>
    <pattern id={hatch} width="5.6" height="5.6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <path d="M1 0V5.6" stroke="var(--steep)" strokeWidth="2.4" />
    </pattern>
    <pattern id={dots} width="6" height="6" patternUnits="userSpaceOnUse">
      <circle cx="1.5" cy="1.5" r="1.3" fill="var(--shallow)" />
      <circle cx="4.5" cy="4.5" r="1.3" fill="var(--shallow)" />
    </pattern>
  </defs>
);

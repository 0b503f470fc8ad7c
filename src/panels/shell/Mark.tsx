/** Our mark: a slanted line on the ground with its pin. */
export const Mark = () => (
  <svg className="mark-sign" viewBox="0 0 30 30" aria-hidden="true">
    <path d="M1 28H29" className="mark-ground" />
    <path d="M3 2 25 28" className="mark-slant" />
    <circle cx="12.3" cy="13" r="4.6" className="mark-pin" />
  </svg>
);

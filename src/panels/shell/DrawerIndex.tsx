/** A section of a long drawer: its element's id, and its name in the index. */
export interface DrawerSection {
  readonly id: string;
  readonly name: string;
}

/** Stands at the top of a long drawer and stays there: a tap brings a section into sight. */
export function DrawerIndex({ label, sections }: { label: string; sections: readonly DrawerSection[] }) {
  const isStill = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;
  return (
    <nav className="drawer-index" aria-label={label}>
      {sections.map(({ id, name }) => (
        <button
          key={id}
          type="button"
          onClick={() =>
            document.getElementById(id)?.scrollIntoView({ block: 'start', behavior: isStill() ? 'auto' : 'smooth' })
          }
        >
          {name}
        </button>
      ))}
    </nav>
  );
}

/** One named value of a list, with a note under it. */
export function Value({ name, note = '', children }: { name: string; note?: string; children: React.ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {children}
        {note !== '' && <span className="value-note">{note}</span>}
      </dd>
    </div>
  );
}

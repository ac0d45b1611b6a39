export type ShapeKind = 'octagon' | 'triangle' | 'ring' | 'tick' | 'dash' | 'wave' | 'turn';

/** A sign that reads without its colour: the same shape always goes with the same words. */
export function Shape({ kind, size = 22 }: { kind: ShapeKind; size?: number }) {
  return (
    <svg className={`shape shape-${kind}`} width={size} height={size} viewBox="0 0 24 24" aria-hidden="true">
      {DRAWN[kind]}
    </svg>
  );
}

const DRAWN: Record<ShapeKind, React.ReactNode> = {
  octagon: (
    <>
      <path className="shape-body" d="M8 2h8l6 6v8l-6 6H8l-6-6V8z" />
      <path className="shape-sign" d="M7 12h10" />
    </>
  ),
  triangle: (
    <>
      <path className="shape-body" d="M12 2.5 23 21.5H1z" />
      <path className="shape-sign" d="M12 9v6M12 17.5v1.5" />
    </>
  ),
  ring: <circle className="shape-line" cx="12" cy="12" r="8.5" />,
  tick: (
    <>
      <circle className="shape-body" cx="12" cy="12" r="10.5" />
      <path className="shape-sign" d="m7 12.5 3.5 3.5L17 8.5" />
    </>
  ),
  dash: <circle className="shape-line shape-dashed" cx="12" cy="12" r="9" />,
  wave: (
    <>
      <circle className="shape-line shape-dashed" cx="12" cy="12" r="9" />
      <path className="shape-line" d="M6.5 13.5c2-4.5 4-4.5 5.5-1.5s3.5 3 5.5-1.5" />
    </>
  ),
  turn: <path className="shape-line" d="M19 8.5A8.5 8.5 0 1 0 20.5 13M20.5 3v6h-6" />,
};

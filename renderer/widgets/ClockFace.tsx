interface ClockFaceProps {
  /** clockwise from 12 o'clock, degrees */
  readonly hands: readonly { readonly atDeg: number; readonly name: string; readonly look: 'near' | 'far' }[];
  readonly caption: string;
  readonly words: string;
}

const CENTRE = 60;
const RIM = 44;

function on(radius: number, atDeg: number): readonly [number, number] {
  const angle = (atDeg * Math.PI) / 180;
  return [CENTRE + radius * Math.sin(angle), CENTRE - radius * Math.cos(angle)];
}

/** A clock face with named hands; the words say the same to those who do not see it. */
export function ClockFace({ hands, caption, words }: ClockFaceProps) {
  return (
    <figure className="clock">
      <svg viewBox="0 0 120 120" role="img" aria-label={words}>
        <circle className="clock-face" cx={CENTRE} cy={CENTRE} r={RIM} />
        {Array.from({ length: 12 }, (_, hour) => {
          const [x, y] = on(RIM, hour * 30);
          const [u, v] = on(RIM - (hour % 3 === 0 ? 8 : 4), hour * 30);
          // biome-ignore lint/suspicious/noArrayIndexKey: the hours are the keys
          return <line key={hour} className="clock-tick" x1={x} y1={y} x2={u} y2={v} />;
        })}
        {hands.map(({ atDeg, name, look }) => {
          const [x, y] = on(RIM - 2, atDeg);
          const [u, v] = on(RIM + 9, atDeg);
          return (
            <g key={name} className={`clock-hand clock-${look}`}>
              <line x1={CENTRE} y1={CENTRE} x2={x} y2={y} />
              <text x={u} y={v + 4}>
                {name}
              </text>
            </g>
          );
        })}
        <circle className="clock-hub" cx={CENTRE} cy={CENTRE} r={6} />
      </svg>
      <figcaption>{caption}</figcaption>
    </figure>
  );
}

/** A hand of a clock face, clockwise from 12 o'clock, degrees. */
export interface ClockHand {
  readonly atDeg: number;
  readonly name: string;
  readonly look: 'near' | 'far';
}

/** Side of the square that a dial is drawn in. */
export const DIAL_SIZE = 120;
const CENTRE = DIAL_SIZE / 2;
const RIM = 44;

function on(radius: number, atDeg: number): readonly [number, number] {
  const angle = (atDeg * Math.PI) / 180;
  return [CENTRE + radius * Math.sin(angle), CENTRE - radius * Math.cos(angle)];
}

/** The drawing of a clock face with named hands, for an `svg` with a view box of `DIAL_SIZE` each way. */
export function ClockDial({ hands }: { hands: readonly ClockHand[] }) {
  return (
    <>
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
    </>
  );
}

import { AxisLine, Dimension, Plate, Tail } from './Dimension.tsx';

const PLATE = 226;
const AXIS = PLATE - 17;
const TIP = 60;
const SHOULDER = 170;
const BEND: readonly [number, number] = [262, AXIS];
const LEG = 150;
const HALF_RIM = 24;
const UNIT = Math.SQRT1_2;
const SEAT: readonly [number, number] = [BEND[0] + LEG * UNIT, BEND[1] - LEG * UNIT];
const INSIDE: readonly [number, number] = [SEAT[0] - HALF_RIM * UNIT, SEAT[1] - HALF_RIM * UNIT];
const OUTSIDE: readonly [number, number] = [SEAT[0] + HALF_RIM * UNIT, SEAT[1] + HALF_RIM * UNIT];

/** A place on the bent leg: so far from the bend along its axis, and so far to its left. */
function onLeg(along: number, left: number): string {
  return `${BEND[0] + (along - left) * UNIT} ${BEND[1] - (along + left) * UNIT}`;
}

/** An elbow with its tail flat on the plate, its rim up. */
export function ElbowDrawing() {
  return (
    <>
      <Plate fromX={30} toX={520} y={PLATE} />
      <AxisLine from={[40, AXIS]} to={[300, AXIS]} />
      <AxisLine from={[BEND[0] - 20 * UNIT, BEND[1] + 20 * UNIT]} to={[SEAT[0] + 26 * UNIT, SEAT[1] - 26 * UNIT]} />
      <Tail tipX={TIP} shoulderX={SHOULDER} axisY={AXIS} thick={34} />
      <path className="drawn-part" d={`M170 ${AXIS - 17}H192V${AXIS + 17}H170z`} />
      <path
        className="drawn-part"
        d={`M192 ${AXIS - 13}H238Q256 ${AXIS - 13} ${onLeg(18, 13)}L${onLeg(LEG, 13)}L${onLeg(LEG, -13)}L${onLeg(30, -13)}Q276 ${AXIS + 13} 246 ${AXIS + 13}H192z`}
      />
      <path
        className="drawn-part"
        d={`M${onLeg(52, 34)}L${onLeg(112, 34)}L${onLeg(112, -34)}L${onLeg(52, -34)}zM${onLeg(52, 12)}L${onLeg(112, 12)}M${onLeg(52, -12)}L${onLeg(112, -12)}`}
      />
      <path
        className="drawn-part"
        d={`M${onLeg(134, 20)}L${onLeg(LEG, HALF_RIM)}L${onLeg(LEG, -HALF_RIM)}L${onLeg(134, -20)}z`}
      />
      <Dimension
        of="tailLength"
        from={[TIP, 164]}
        to={[SHOULDER, 164]}
        leads={[
          [TIP, 196],
          [SHOULDER, 192],
        ]}
      />
      <Dimension
        of="tailDiameter"
        from={[36, AXIS - 17]}
        to={[36, PLATE]}
        aside={-14}
        leads={[
          [TIP, AXIS - 17],
          [TIP, PLATE],
        ]}
      />
      <Dimension of="tipToInside" from={[TIP, 252]} to={[INSIDE[0], 252]} leads={[[TIP, PLATE], INSIDE]} />
      <Dimension of="tipToOutside" from={[TIP, 282]} to={[OUTSIDE[0], 282]} leads={[[TIP, PLATE], OUTSIDE]} />
      <Dimension of="heightInside" from={[496, PLATE]} to={[496, INSIDE[1]]} leads={[[496, PLATE], INSIDE]} />
      <Dimension of="heightOutside" from={[446, PLATE]} to={[446, OUTSIDE[1]]} leads={[[446, PLATE], OUTSIDE]} />
      <Dimension
        of="rimDiameter"
        from={[INSIDE[0] + 22 * UNIT, INSIDE[1] - 22 * UNIT]}
        to={[OUTSIDE[0] + 22 * UNIT, OUTSIDE[1] - 22 * UNIT]}
        aside={16}
        leads={[INSIDE, OUTSIDE]}
      />
      <Dimension
        of="seatLeg"
        from={[BEND[0] - 48 * UNIT, BEND[1] - 48 * UNIT]}
        to={[SEAT[0] - 48 * UNIT, SEAT[1] - 48 * UNIT]}
        leads={[BEND, SEAT]}
      />
      <Dimension of="hoseLeg" from={[SHOULDER, 136]} to={[BEND[0], 136]} leads={[[SHOULDER, 192], BEND]} />
      <Bend />
    </>
  );
}

/** How far the port's axis is turned out of the hose's. */
function Bend() {
  const radius = 58;
  return (
    <g className="dimension">
      <path
        className="dimension-arc"
        d={`M${BEND[0] + radius} ${BEND[1]}A${radius} ${radius} 0 0 0 ${BEND[0] + radius * UNIT} ${BEND[1] - radius * UNIT}`}
      />
      <text x={BEND[0] + radius + 14} y={BEND[1] - 18}>
        b
      </text>
    </g>
  );
}

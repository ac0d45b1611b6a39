import { AxisLine, Dimension, Tail } from './Dimension.tsx';

const SEAT_AXIS = 92;
const TAIL_AXIS = 200;
const BEND_X = 360;
const RADIUS = (TAIL_AXIS - SEAT_AXIS) / 2;
const HALF_TUBE = 15;
const CROWN = BEND_X + RADIUS + HALF_TUBE;
const TIP = 80;
const SHOULDER = 200;
const SEAT = 160;

/** An end that turns the hose back, both legs flat on the plate, seen from above. */
export function HalfTurnDrawing() {
  const outer = RADIUS + HALF_TUBE;
  const inner = RADIUS - HALF_TUBE;
  return (
    <>
      <AxisLine from={[120, SEAT_AXIS]} to={[BEND_X + 20, SEAT_AXIS]} />
      <AxisLine from={[60, TAIL_AXIS]} to={[BEND_X + 20, TAIL_AXIS]} />
      <path
        className="drawn-part"
        d={`M${SEAT} ${SEAT_AXIS - HALF_TUBE}H${BEND_X}A${outer} ${outer} 0 0 1 ${BEND_X} ${TAIL_AXIS + HALF_TUBE}H230V${TAIL_AXIS - HALF_TUBE}H${BEND_X}A${inner} ${inner} 0 0 0 ${BEND_X} ${SEAT_AXIS + HALF_TUBE}H${SEAT}z`}
      />
      <path
        className="drawn-part"
        d={`M190 ${SEAT_AXIS - 30}H250V${SEAT_AXIS + 30}H190zM190 ${SEAT_AXIS - 10}H250M190 ${SEAT_AXIS + 10}H250`}
      />
      <path className="drawn-part" d={`M${SHOULDER} ${TAIL_AXIS - 20}H230V${TAIL_AXIS + 20}H${SHOULDER}z`} />
      <Tail tipX={TIP} shoulderX={SHOULDER} axisY={TAIL_AXIS} thick={34} />
      <Dimension
        of="crownToSeat"
        from={[SEAT, 28]}
        to={[CROWN, 28]}
        leads={[
          [SEAT, SEAT_AXIS],
          [CROWN, 146],
        ]}
      />
      <Dimension
        of="crownToTip"
        from={[TIP, 282]}
        to={[CROWN, 282]}
        leads={[
          [TIP, TAIL_AXIS],
          [CROWN, 146],
        ]}
      />
      <Dimension
        of="tailLength"
        from={[TIP, 246]}
        to={[SHOULDER, 246]}
        leads={[
          [TIP, TAIL_AXIS],
          [SHOULDER, 218],
        ]}
      />
      <Dimension
        of="seatToTip"
        from={[TIP, 134]}
        to={[SEAT, 134]}
        leads={[
          [TIP, TAIL_AXIS],
          [SEAT, SEAT_AXIS],
        ]}
      />
      <Dimension
        of="overLegs"
        from={[490, SEAT_AXIS - HALF_TUBE]}
        to={[490, TAIL_AXIS + HALF_TUBE]}
        leads={[
          [BEND_X, SEAT_AXIS - HALF_TUBE],
          [BEND_X, TAIL_AXIS + HALF_TUBE],
        ]}
      />
      <Dimension of="gap" from={[320, SEAT_AXIS + HALF_TUBE]} to={[320, TAIL_AXIS - HALF_TUBE]} />
      <Dimension
        of="legDiameter"
        from={[136, SEAT_AXIS - HALF_TUBE]}
        to={[136, SEAT_AXIS + HALF_TUBE]}
        aside={-14}
        leads={[
          [SEAT, SEAT_AXIS - HALF_TUBE],
          [SEAT, SEAT_AXIS + HALF_TUBE],
        ]}
      />
      <Dimension
        of="tailDiameter"
        from={[52, TAIL_AXIS - 17]}
        to={[52, TAIL_AXIS + 17]}
        aside={-14}
        leads={[
          [TIP, TAIL_AXIS - 17],
          [TIP, TAIL_AXIS + 17],
        ]}
      />
    </>
  );
}

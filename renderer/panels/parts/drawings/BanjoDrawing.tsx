import { AxisLine, Dimension, Plate, Tail } from './Dimension.tsx';

const TIP = 80;
const SHOULDER = 190;
const EYE = 400;
const R = 52;
const HOLE = 26;
const TOP = 104;
const PLATE = 276;

/** A banjo from above, and under it flat on the plate from the side. */
export function BanjoDrawing() {
  return (
    <>
      <AxisLine from={[60, TOP]} to={[480, TOP]} />
      <path
        className="drawn-part"
        d={`M190 ${TOP - 18}H214V${TOP + 18}H190zM214 ${TOP - 13}H${EYE - 48}V${TOP + 13}H214z`}
      />
      <Tail tipX={TIP} shoulderX={SHOULDER} axisY={TOP} thick={30} />
      <circle className="drawn-part" cx={EYE} cy={TOP} r={R} />
      <circle className="drawn-hole" cx={EYE} cy={TOP} r={HOLE} />
      <AxisLine from={[EYE, TOP - 34]} to={[EYE, TOP + 34]} />
      <Dimension
        of="farEdgeToTip"
        from={[TIP, 24]}
        to={[EYE + R, 24]}
        leads={[
          [TIP, TOP],
          [EYE + R, TOP],
        ]}
      />
      <Dimension
        of="tailLength"
        from={[TIP, 62]}
        to={[SHOULDER, 62]}
        leads={[
          [TIP, TOP],
          [SHOULDER, 86],
        ]}
      />
      <Dimension
        of="eyeDiameter"
        from={[482, TOP - R]}
        to={[482, TOP + R]}
        leads={[
          [EYE, TOP - R],
          [EYE, TOP + R],
        ]}
      />
      <Dimension of="holeDiameter" from={[EYE + 10, TOP - HOLE]} to={[EYE + 10, TOP + HOLE]} aside={-16} />
      <Dimension
        of="holeToTip"
        from={[TIP, 150]}
        to={[EYE - HOLE, 150]}
        leads={[
          [TIP, TOP],
          [EYE - HOLE, TOP],
        ]}
      />

      <Plate fromX={40} toX={510} y={PLATE} />
      <path
        className="drawn-part"
        d={`M190 ${PLATE - 36}H214V${PLATE - 4}H190zM214 ${PLATE - 32}H${EYE - 48}V${PLATE - 8}H214z`}
      />
      <Tail tipX={TIP} shoulderX={SHOULDER} axisY={PLATE - 20} thick={28} />
      <path className="drawn-part" d={`M${EYE - R} ${PLATE - 40}H${EYE + R}V${PLATE}H${EYE - R}z`} />
      <path className="drawn-hidden" d={`M${EYE - HOLE} ${PLATE - 40}V${PLATE}M${EYE + HOLE} ${PLATE - 40}V${PLATE}`} />
      <Dimension
        of="eyeThickness"
        from={[482, PLATE - 40]}
        to={[482, PLATE]}
        aside={-16}
        leads={[
          [EYE + R, PLATE - 40],
          [482, PLATE],
        ]}
      />
      <Dimension of="tailTop" from={[150, PLATE]} to={[150, PLATE - 34]} aside={-16} />
      <Dimension
        of="tailDiameter"
        from={[54, PLATE - 34]}
        to={[54, PLATE - 6]}
        aside={-16}
        leads={[
          [TIP, PLATE - 34],
          [TIP, PLATE - 6],
        ]}
      />
    </>
  );
}

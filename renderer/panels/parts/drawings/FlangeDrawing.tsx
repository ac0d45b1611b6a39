import { AxisLine, Dimension, Plate, Tail } from './Dimension.tsx';

const PLATE = 236;
const AXIS = 104;
const TIP = 90;
const SHOULDER = 210;
const MIDDLE = 400;
const HALF = 68;

/** A square flange elbow with its face on the plate, its tail out to the side. */
export function FlangeDrawing() {
  return (
    <>
      <Plate fromX={40} toX={510} y={PLATE} />
      <AxisLine from={[66, AXIS]} to={[MIDDLE + 20, AXIS]} />
      <AxisLine from={[MIDDLE, AXIS - 20]} to={[MIDDLE, PLATE + 4]} />
      <path className="drawn-part" d={`M${MIDDLE - HALF} ${PLATE - 20}H${MIDDLE + HALF}V${PLATE}H${MIDDLE - HALF}z`} />
      <path
        className="drawn-part"
        d={`M234 ${AXIS - 16}H${MIDDLE - 24}Q${MIDDLE + 16} ${AXIS - 16} ${MIDDLE + 16} ${AXIS + 24}V${PLATE - 20}H${MIDDLE - 16}V${AXIS + 30}Q${MIDDLE - 16} ${AXIS + 16} ${MIDDLE - 30} ${AXIS + 16}H234z`}
      />
      <path className="drawn-part" d={`M${SHOULDER} ${AXIS - 22}H234V${AXIS + 22}H${SHOULDER}z`} />
      <Tail tipX={TIP} shoulderX={SHOULDER} axisY={AXIS} thick={34} />
      <Dimension
        of="tailLength"
        from={[TIP, 56]}
        to={[SHOULDER, 56]}
        leads={[
          [TIP, AXIS],
          [SHOULDER, 82],
        ]}
      />
      <Dimension of="tailTop" from={[110, PLATE]} to={[110, AXIS - 17]} />
      <Dimension of="tailTopInner" from={[290, PLATE]} to={[290, AXIS - 16]} />
      <Dimension
        of="betweenTops"
        from={[110, 22]}
        to={[290, 22]}
        leads={[
          [110, AXIS - 17],
          [290, AXIS - 16],
        ]}
      />
      <Dimension
        of="tailDiameter"
        from={[62, AXIS - 17]}
        to={[62, AXIS + 17]}
        aside={-14}
        leads={[
          [TIP, AXIS - 17],
          [TIP, AXIS + 17],
        ]}
      />
      <Dimension
        of="flangeAcross"
        from={[MIDDLE - HALF, 262]}
        to={[MIDDLE + HALF, 262]}
        leads={[
          [MIDDLE - HALF, PLATE],
          [MIDDLE + HALF, PLATE],
        ]}
      />
      <Dimension
        of="farEdgeToTip"
        from={[TIP, 288]}
        to={[MIDDLE + HALF, 288]}
        leads={[
          [TIP, AXIS],
          [MIDDLE + HALF, PLATE],
        ]}
      />
    </>
  );
}

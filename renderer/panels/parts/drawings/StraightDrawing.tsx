import { AxisLine, Dimension, Tail } from './Dimension.tsx';

const SEAT = 430;
const SHOULDER = 250;
const TIP = 90;
const MOUTH = 118;

/** A straight end, loose and above it assembled on its hose. */
export function StraightDrawing() {
  return (
    <>
      <g>
        <AxisLine from={[60, 88]} to={[460, 88]} />
        <path className="drawn-hose" d="M40 66H250V110H40z" />
        <path className="drawn-part" d="M118 52H262V124H118z" />
        <Body axisY={88} />
        <path className="drawn-hidden" d="M250 52V124" />
        <Dimension
          of="seatToMouth"
          from={[MOUTH, 22]}
          to={[SEAT, 22]}
          leads={[
            [MOUTH, 52],
            [SEAT, 72],
          ]}
        />
        <Dimension
          of="insertion"
          from={[MOUTH, 144]}
          to={[SHOULDER, 144]}
          leads={[
            [MOUTH, 124],
            [SHOULDER, 124],
          ]}
        />
      </g>
      <g>
        <AxisLine from={[60, 232]} to={[460, 232]} />
        <Tail tipX={TIP} shoulderX={SHOULDER} axisY={232} thick={44} />
        <Body axisY={232} />
        <Dimension
          of="tailLength"
          from={[TIP, 182]}
          to={[SHOULDER, 182]}
          leads={[
            [TIP, 216],
            [SHOULDER, 206],
          ]}
        />
        <Dimension
          of="seatToTip"
          from={[TIP, 290]}
          to={[SEAT, 290]}
          leads={[
            [TIP, 250],
            [SEAT, 250],
          ]}
        />
      </g>
      <text className="drawn-word" x={470} y={92}>
        assembled
      </text>
      <text className="drawn-word" x={470} y={236}>
        loose
      </text>
    </>
  );
}

/** Shoulder, body, nut pushed back, and the nose with the seat at its end. */
function Body({ axisY: y }: { axisY: number }) {
  return (
    <>
      <path className="drawn-part" d={`M250 ${y - 26}H282V${y + 26}H250z`} />
      <path className="drawn-part" d={`M282 ${y - 16}H416L${SEAT} ${y - 10}V${y + 10}L416 ${y + 16}H282z`} />
      <path className="drawn-part" d={`M300 ${y - 34}H372V${y + 34}H300zM300 ${y - 12}H372M300 ${y + 12}H372`} />
    </>
  );
}

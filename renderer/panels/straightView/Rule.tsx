import { inchTicks, mmTicks, type RuleTick, type StraightScale } from './scale.ts';

/** The steel rule along the hose: millimetres on its upper edge, inches on its lower, zero at shoulder A. */
export function Rule({
  lengthMm,
  scale,
  topPx,
  heightPx,
}: {
  lengthMm: number;
  scale: StraightScale;
  topPx: number;
  heightPx: number;
}) {
  const start = scale.x(0);
  const stop = scale.x(lengthMm);
  return (
    <g className="rule">
      <rect className="rule-steel" x={start - 10} y={topPx} width={stop - start + 70} height={heightPx} rx={2} />
      <circle className="rule-hole" cx={stop + 50} cy={topPx + heightPx / 2} r={4} />
      {mmTicks(lengthMm, scale.pxPerMm).map((tick) => (
        <Tick key={tick.mm} tick={tick} x={scale.x(tick.mm)} edgePx={topPx} reachPx={heightPx * 0.28} />
      ))}
      {inchTicks(lengthMm, scale.pxPerMm).map((tick) => (
        <Tick key={tick.mm} tick={tick} x={scale.x(tick.mm)} edgePx={topPx + heightPx} reachPx={-heightPx * 0.28} />
      ))}
      <text className="rule-unit" x={stop + 38} y={topPx + 12} textAnchor="end">
        mm
      </text>
      <text className="rule-unit" x={stop + 38} y={topPx + heightPx - 5} textAnchor="end">
        in
      </text>
    </g>
  );
}

function Tick({ tick, x, edgePx, reachPx }: { tick: RuleTick; x: number; edgePx: number; reachPx: number }) {
  const reach = reachPx * tick.tall;
  const numberY = reachPx > 0 ? edgePx + reachPx + 8 : edgePx + reachPx - 1;
  return (
    <g>
      <line x1={x} x2={x} y1={edgePx} y2={edgePx + reach} />
      {tick.number !== undefined && (
        <text x={x + 3} y={numberY}>
          {tick.number}
        </text>
      )}
    </g>
  );
}

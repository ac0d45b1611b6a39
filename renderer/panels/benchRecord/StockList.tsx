import { useMemo } from 'react';
import type { PieceCuts } from '../../../shared/document/stock/cutPlan.ts';
import type { OpenDocument } from '../../state/documentStore.ts';
import { type StockPlan, stockPlan } from '../../state/stockPlan.ts';
import { Length } from '../Length.tsx';

/** From which roll or offcut each hose that may be cut is cut, with what is left of it. */
export function StockList({ open }: { open: OpenDocument }) {
  const plan = useMemo(() => stockPlan(open), [open]);
  const names = (ids: readonly string[]): string =>
    ids.map((id) => open.history.present.runs.find((run) => run.id === id)?.name ?? id).join(', ');
  return (
    <details className="named-lengths">
      <summary>What to cut from which roll</summary>
      {open.tables.rolls.length === 0 ? (
        <p className="teach">
          No rolls are listed. Put the rolls and offcuts on your shelf in the drawer of parts, and it is said here which
          hose comes off which.
        </p>
      ) : (
        <StockHoses plan={plan} names={names} />
      )}
      {plan.cut.length > 0 && <p className="teach">Cut already: {names(plan.cut)}.</p>}
      {plan.leftOut.length > 0 && (
        <p className="teach">
          Nothing is set aside for {names(plan.leftOut)}: not laid as stated, or not to be cut as it lies.
        </p>
      )}
    </details>
  );
}

function StockHoses({ plan, names }: { plan: StockPlan; names: (ids: readonly string[]) => string }) {
  return (
    <>
      {plan.hoses.map(({ hose, name, plan: cuts }) => (
        <div key={hose}>
          <h4>{name}</h4>
          <ul className="supports">
            {cuts.pieces.map((piece) => (
              <PieceRow key={piece.piece.id} piece={piece} names={names} />
            ))}
          </ul>
          {cuts.notHeld.map(({ run, lengthMm }) => (
            <p className="reason" key={run}>
              {names([run])} needs <Length mm={lengthMm} rounding="up" />: no roll or offcut has that left.
            </p>
          ))}
          {!cuts.proven && <p className="teach">Too many ways to look through all of them; another may waste less.</p>}
        </div>
      ))}
      <p className="teach">
        Every cut is counted with <Length mm={plan.kerfMm} /> for the blade (common practice, no source). Offcuts go
        first, then the oldest hose.
      </p>
    </>
  );
}

function PieceRow({ piece, names }: { piece: PieceCuts; names: (ids: readonly string[]) => string }) {
  const { id, lengthMm, offcut, cureDate } = piece.piece;
  return (
    <li className="support support-asked">
      <span className="support-name">
        {id}, {offcut === true ? 'offcut' : 'roll'} of <Length mm={lengthMm} rounding="down" />
        {cureDate !== undefined && `, cured ${cureDate}`}
        <span className="value-note">
          {piece.cuts.map(({ run, lengthMm: mm }, i) => (
            <span key={run}>
              {i > 0 && '; '}
              {names([run])} <Length mm={mm} rounding="up" />
            </span>
          ))}
          ; left <Length mm={piece.leftMm} rounding="down" />
        </span>
      </span>
    </li>
  );
}

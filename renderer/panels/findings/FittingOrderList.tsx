import { fittingOrder } from '../../../shared/document/lay/fittingOrder.ts';
import type { LayReport } from '../../../shared/document/lay/schema.ts';
import type { Project } from '../../../shared/document/project/schema.ts';

/** In which order the hoses go on, where one stands in the way of another's wrench; nothing where any order does. */
export function FittingOrderList({ report, project }: { report: LayReport; project: Project }) {
  const { order, after, stuck } = fittingOrder(report);
  if (Object.keys(after).length === 0) return null;
  const names = (ids: readonly string[]): string =>
    ids.map((id) => project.runs.find((run) => run.id === id)?.name ?? id).join(', ');
  return (
    <section aria-labelledby="fitting-order">
      <h3 id="fitting-order">Order of fitting</h3>
      <ol>
        {order.map((id) => (
          <li key={id}>
            {names([id])}
            {after[id] !== undefined && <span className="value-note">after {names(after[id])}</span>}
          </li>
        ))}
      </ol>
      {stuck.map((ids) => (
        <p className="reason" key={ids.join()}>
          {names(ids)}: neither can be tightened after the other. Loosen both, or move one.
        </p>
      ))}
    </section>
  );
}

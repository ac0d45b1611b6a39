import type { Finding, Severity } from '../../shared/document/lay/schema.ts';

const RANK: Record<Severity, number> = { stop: 0, look: 1, note: 2 };

/** A finding with the number on its flag, counted from 1 in the order shown; the bay and the straight view use the same. */
export interface NumberedFinding {
  readonly number: number;
  readonly finding: Finding;
}

/** Findings as they are shown: what forbids cutting first, then by how far over the limit, then as reported. */
export function orderFindings(findings: readonly Finding[]): readonly NumberedFinding[] {
  const relativeMargin = (f: Finding): number => f.margin / Math.max(Math.abs(f.limit), 1e-9);
  return findings
    .map((finding, index) => ({ finding, index }))
    .sort(
      (p, q) =>
        RANK[p.finding.severity] - RANK[q.finding.severity] ||
        relativeMargin(p.finding) - relativeMargin(q.finding) ||
        p.index - q.index,
    )
    .map(({ finding }, i) => ({ number: i + 1, finding }));
}

import type { Lay, TaperPose } from '../../../shared/document/lay/schema.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { CHECK_WORDS } from '../../../shared/document/wording/findingWords.ts';
import { formatTurn } from '../../../shared/sheets/format/index.ts';
import { WorstClearance } from './WorstClearance.tsx';
import { type Worst, WorstFigures } from './WorstFigures.tsx';

/** The hose wherever the taper threads of its ports come tight: the worst of each figure, and at which clock it is so. */
export function RunTaper({ lay, project }: { lay: Lay; project: Project }) {
  const { taper } = lay;
  if (taper === undefined) return null;
  const { poses, ranges, worst } = taper;
  const at = (n: number | undefined): TaperPose | undefined => (n === undefined ? undefined : poses[n]);
  const worstOf = (n: number | undefined, of: (pose: TaperPose) => number | undefined): Worst | undefined => {
    const pose = at(n);
    const value = pose === undefined ? undefined : of(pose);
    return pose === undefined || value === undefined ? undefined : { value, note: pose.name };
  };
  const slackMm = worstOf(worst.slackLeft, (p) => Math.min(p.slackLeftMm, -(p.missingMm ?? -p.slackLeftMm)));
  const clearance = at(worst.clearance);
  return (
    <section aria-label={CHECK_WORDS.taperRange}>
      <h3>{CHECK_WORDS.taperRange}</h3>
      <p className="teach">
        {ranges
          .map((r) => `${r.adapter} at END ${r.end.toUpperCase()}, ${formatTurn(r.fromDeg)} to ${formatTurn(r.toDeg)}`)
          .join('; ')}
        : the same hose at {poses.length} clocks of it.
      </p>
      <dl className="values">
        {slackMm !== undefined && (
          <WorstFigures
            slackMm={slackMm}
            radiusMm={worstOf(worst.minRadius, (p) => p.minRadius?.provenAtLeastMm)}
            twistDeg={worstOf(worst.twist, (p) => p.twistDeg)}
          />
        )}
        {clearance?.tightest !== undefined && (
          <WorstClearance clearance={clearance.tightest} where={clearance.name} project={project} />
        )}
      </dl>
    </section>
  );
}

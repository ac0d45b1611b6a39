import type { Lay, Rock } from '../../../shared/document/lay/schema.ts';
import { leastSlackMm, worstExtreme } from '../../../shared/document/lay/tightOrder.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { CHECK_WORDS } from '../../../shared/document/wording/findingWords.ts';
import { formatNumber } from '../../../shared/sheets/format/index.ts';
import { WorstClearance } from './WorstClearance.tsx';
import { WorstFigures } from './WorstFigures.tsx';

/** The hose when bodies stand at the extremes of their motion: the worst of each figure, and where it is so. */
export function RunRock({ lay, project }: { lay: Lay; project: Project }) {
  const { rock } = lay;
  if (rock === undefined) return null;
  const clearance = worstExtreme(rock, 'clearance');
  return (
    <section aria-label={CHECK_WORDS.rock}>
      <h3>{CHECK_WORDS.rock}</h3>
      {rock.carried && <p className="teach">Everything that holds this hose moves as one, and the hose with it.</p>}
      <dl className="values">
        {!rock.carried && <Worked rock={rock} />}
        {clearance?.tightest !== undefined && (
          <WorstClearance clearance={clearance.tightest} where={clearance.pose.name} project={project} />
        )}
      </dl>
    </section>
  );
}

function Worked({ rock }: { rock: Rock }) {
  const slack = worstExtreme(rock, 'slackLeft');
  const bend = worstExtreme(rock, 'minRadius');
  const twist = worstExtreme(rock, 'twist');
  const note = [slack?.pose.name, tightText(rock)].filter((t) => t !== undefined).join('; ');
  return (
    <WorstFigures
      slackMm={{ value: leastSlackMm(rock), note }}
      radiusMm={bend?.minRadius && { value: bend.minRadius.provenAtLeastMm, note: bend.pose.name }}
      twistDeg={twist?.twistDeg === undefined ? undefined : { value: twist.twistDeg, note: twist.pose.name }}
    />
  );
}

/** At what share of the motion it goes tight, rounded down so that it is never said later than it is. */
export function tightText({ tightAt }: Rock): string {
  return tightAt === undefined
    ? 'not tight within twice the motion'
    : `tight at ${formatNumber(tightAt.share * 100, 0, 'down')} % of the motion`;
}

import type { Lay, Rock } from '../../../shared/document/lay/schema.ts';
import { leastSlackMm, worstExtreme } from '../../../shared/document/lay/tightOrder.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { CHECK_WORDS } from '../../../shared/document/wording/findingWords.ts';
import { formatNumber, formatTurn, isStraight } from '../../../shared/sheets/format/index.ts';
import { Length } from '../Length.tsx';
import { thingName } from './Nearest.tsx';
import { Value } from './Value.tsx';

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
          <Value
            name="Tightest clearance"
            note={`${thingName(project, clearance.tightest.to)}, ${clearance.pose.name}`}
          >
            <Length mm={clearance.tightest.clearanceMm} rounding="down" denominator={32} />
            <span className="against"> needs </span>
            <Length mm={clearance.tightest.requiredMm} rounding="up" denominator={32} />
          </Value>
        )}
      </dl>
    </section>
  );
}

function Worked({ rock }: { rock: Rock }) {
  const slack = worstExtreme(rock, 'slackLeft');
  const bend = worstExtreme(rock, 'minRadius');
  const twist = worstExtreme(rock, 'twist');
  return (
    <>
      <Value name="Slack left" note={[slack?.pose.name, tightText(rock)].filter((t) => t !== undefined).join('; ')}>
        <Length mm={leastSlackMm(rock)} rounding="down" denominator={32} />
      </Value>
      {bend?.minRadius !== undefined && (
        <Value name="Tightest bend" note={bend.pose.name}>
          {isStraight(bend.minRadius.provenAtLeastMm) ? (
            <span className="figure">straight</span>
          ) : (
            <Length mm={bend.minRadius.provenAtLeastMm} rounding="down" />
          )}
        </Value>
      )}
      {twist?.twistDeg !== undefined && (
        <Value name="Most twist" note={twist.pose.name}>
          <span className="figure">{formatTurn(Math.abs(twist.twistDeg), 'up')}</span>
        </Value>
      )}
    </>
  );
}

/** At what share of the motion it goes tight, rounded down so that it is never said later than it is. */
export function tightText({ tightAt }: Rock): string {
  return tightAt === undefined
    ? 'not tight within twice the motion'
    : `tight at ${formatNumber(tightAt.share * 100, 0, 'down')} % of the motion`;
}

import type { Breath, Clearance, Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { clearanceToRun } from '../layRun/clearanceToRun.ts';
import { profileToRun } from '../layRun/profileToRun.ts';
import { runSetting } from '../layRun/runLimits.ts';
import { fieldOfLay } from '../layRun/tubesOfLay.ts';
import type { Bench } from './bench.ts';
import { breathClearances, type RunLaid } from './conflicts.ts';

/**
 * A lay with what it has to tell of every other run as that lies now. To those that stood in the bay when it was made
 * that is measured already; to the others it is here, on the report's line: clearance, profile, and how near the hose
 * comes to them under pressure.
 */
export function towardsAll(bench: Bench, run: ResolvedRun, lay: Lay): Lay {
  const { context, resolved, laid, known } = bench;
  const setting = runSetting(context.project, run);
  const others = resolved.runs.flatMap((other): RunLaid[] => {
    const theirs = laid.get(other.run.id);
    return theirs === undefined || theirs.run === lay.run ? [] : [{ run: other, lay: theirs }];
  });
  const isKnown = (other: RunLaid): boolean => known.get(lay)?.has(other.lay) === true;
  const anew = others.filter((other) => !isKnown(other));
  const { profile } = lay;
  return {
    ...lay,
    clearances: [
      ...lay.clearances.filter((c) => c.to.kind === 'skin'),
      ...others.flatMap((other) => {
        if (isKnown(other)) return lay.clearances.filter((c) => isOf(c, other));
        return (
          clearanceToRun(context.project, setting, lay, other.lay.run, fieldOfLay(other.lay, other.run, run)) ?? []
        );
      }),
    ],
    ...(profile === undefined
      ? {}
      : {
          profile: {
            ...profile,
            near: [
              ...profile.near.filter((n) => n.to.kind === 'skin'),
              ...others.flatMap((other) => {
                if (isKnown(other)) return profile.near.filter((n) => isOf(n, other));
                return profileToRun(
                  context.project,
                  setting,
                  lay,
                  other.lay.run,
                  fieldOfLay(other.lay, other.run, run),
                );
              }),
            ],
          },
        }),
    ...(lay.breathing === undefined ? {} : { breathing: breathsAmong(bench, { run, lay }, lay.breathing, anew) }),
  };
}

function isOf({ to }: Pick<Clearance, 'to'>, other: RunLaid): boolean {
  return to.kind === 'run' && to.id === other.lay.run;
}

function breathsAmong(bench: Bench, one: RunLaid, breaths: readonly Breath[], others: readonly RunLaid[]): Breath[] {
  const over = (c: Clearance): number => c.clearanceMm - c.requiredMm;
  const near = others.map((other) => breathClearances(bench, one, other));
  return breaths.map((breath, i) => {
    const all = [breath.tightest, ...near.map((clearances) => clearances[i])].filter((c) => c !== undefined);
    const tightest = all.reduce<Clearance | undefined>(
      (a, b) => (a === undefined || over(b) < over(a) ? b : a),
      undefined,
    );
    return tightest === undefined ? breath : { ...breath, tightest };
  });
}

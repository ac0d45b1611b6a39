import { expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { openAttempt } from '../../../../shared/solve/layRun/attemptRoom.ts';
import { EVERYTHING } from '../../../../shared/solve/layRun/attempts.ts';
import { fieldsOfRun } from '../../../../shared/solve/layRun/fieldOfRun.ts';
import { hosesInTurn } from '../../../../shared/solve/layRun/hosesInTurn.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { runSetting } from '../../../../shared/solve/layRun/runLimits.ts';
import { tautThroughHolds } from '../../../../shared/solve/layRun/throughClamps.ts';
import { blockBay } from '../../../arbitraries/blockBays.ts';
import { layBreaches } from '../../../oracles/layInvariants.ts';

const ALONE = buildTubeField([]);
/** Plain clearance and spacing of the rule pack: 12 mm each (JTM001-1 13.3.4, 0.47 in printed as 12 mm); the bays are certain. */
const ASKED = { clearanceMm: 12, spacingMm: 12 };
/** Wanted (NAVEDTRA 14105 p. 5-11/5-12), less what a search leaves of the shortest way. */
const LEAST_SLACK = 0.05 - 0.001;

it.each([
  [27, 2],
  [46, 0],
])('looks on where the first hose without fault has too little slack: bay %d, run %d', (seed, number) => {
  const { bay, project, mesh } = blockBay(seed, 45, 3);
  const run = project.runs[number]!;
  const context = { project: project.project, bay };
  const setting = runSetting(context.project, run);
  const room = openAttempt(context, setting, ALONE, EVERYTHING, UNWATCHED)!;
  const first = [...hosesInTurn(room, EVERYTHING, true, UNWATCHED)].find((c) => c?.judgement.fault === 0)!;
  const { asked } = fieldsOfRun(context, setting, ALONE)(1);
  const taut = tautThroughHolds(setting, first.shape, asked, UNWATCHED)!;
  const { a, b } = taut.tailMm;
  expect(first.shape.liveLengthMm / (taut.lengthMm + a + b)).toBeLessThan(1 + LEAST_SLACK);

  const lay = layRun(context, run, ALONE, UNWATCHED);
  expect(lay.outcome).toBe('laid');
  expect(lay.liveLengthMm / lay.tautLengthMm).toBeGreaterThan(1 + LEAST_SLACK);
  expect(layBreaches(lay, run, mesh, [], ASKED)).toEqual([]);
});

import { expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { HeatState, HeatTrack } from '../../../../shared/document/lay/heat.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { heatOf } from '../../../../shared/solve/heat/heatOf.ts';
import { RAYS_A_SECTOR } from '../../../../shared/solve/heat/radiationAlong.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { NINE_HEATED } from '../../../arbitraries/heatedRuns.ts';
import { buildExampleIndex, resolved } from '../../../bench/exampleBay.ts';

const bay = buildExampleIndex();
const context = { project: resolved.project, bay };

function tracks(state: HeatState): HeatTrack[] {
  return [state.liner, state.cover, ...(state.sleeve === undefined ? [] : [state.sleeve])];
}

it.each(NINE_HEATED)('half the rays move no temperature of %s by more than its band', (id) => {
  const run = resolved.runs.find((r) => r.run.id === id)!;
  const lay = layRun(context, run, buildTubeField([]), UNWATCHED);
  const at = (rays: number) => heatOf(run, lay, bay, resolved.project.bay, UNWATCHED, rays)!;
  const full = at(RAYS_A_SECTOR);
  const half = at(RAYS_A_SECTOR / 2);
  // The fuel feed lies where it sees nothing hot.
  expect(Math.max(...full.radiationWPerM2) > 500).toBe(id !== 'fuel-feed');
  for (const state of ['running', 'soak'] as const)
    tracks(full[state]).forEach((track, t) => {
      const halved = tracks(half[state])[t]!;
      track.likely.forEach((_, i) => {
        expect(halved.likely[i]!).toBeGreaterThanOrEqual(track.low[i]!);
        expect(halved.likely[i]!).toBeLessThanOrEqual(track.high[i]!);
      });
    });
  full.radiationWPerM2.forEach((flux, i) => {
    const error = Math.hypot(full.radiationErrorWPerM2[i]!, half.radiationErrorWPerM2[i]!);
    expect(Math.abs(flux - half.radiationWPerM2[i]!)).toBeLessThanOrEqual(4 * error);
  });
});

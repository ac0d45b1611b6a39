import { describe, expect, it } from 'vitest';
import { createHandStore, NO_TOOL } from '../../../renderer/state/handStore.ts';
import { createOnMeasure, measured } from '../../../renderer/state/onMeasure.ts';
import { createSectionStore, isCutAway } from '../../../renderer/state/sectionStore.ts';
import { SAMPLE_BAY, sampleBench } from '../sampleBench.ts';

describe('the bay cut open', () => {
  it('takes off what lies on the far side of the plane and outside the box, and no more', () => {
    const section = createSectionStore();
    section.setPlane({ point: [0, 0, 10], away: [0, 0, 1] });
    expect(isCutAway(section.getState(), [5, 5, 10.1])).toBe(true);
    expect(isCutAway(section.getState(), [5, 5, 9.9])).toBe(false);
    section.setBox({ low: [0, 0, 0], high: [10, 10, 100] });
    expect(isCutAway(section.getState(), [5, 5, 5])).toBe(false);
    expect(isCutAway(section.getState(), [10.1, 5, 5])).toBe(true);
    section.whole();
    expect(isCutAway(section.getState(), [500, 5, 5])).toBe(false);
  });

  it('takes more of the bay away as the plane is moved against its own direction', () => {
    const section = createSectionStore();
    section.setPlane({ point: [0, 0, 10], away: [0, 0, 1] });
    section.movePlane(-4);
    expect(section.getState().plane?.point).toEqual([0, 0, 6]);
    expect(isCutAway(section.getState(), [0, 0, 7])).toBe(true);
  });

  it('stays cut when its card is put away', () => {
    const section = createSectionStore();
    section.open();
    section.setPlane({ point: [0, 0, 0], away: [1, 0, 0] });
    section.shut();
    expect(section.getState()).toMatchObject({ isOpen: false, plane: { away: [1, 0, 0] } });
  });
});

describe('measuring between two places', () => {
  const at = (point: readonly [number, number, number]) => ({ point, normal: [0, 0, 1] as const, part: 'block' });

  it('answers the distance and its parts along the axes; a third place begins anew', () => {
    const hand = createHandStore();
    const measure = createOnMeasure(hand);
    measure.begin();
    measure.take(at([1, 2, 3]));
    expect(measured(measure.getState())).toBeNull();
    measure.take(at([4, 6, 15]));
    expect(measured(measure.getState())).toEqual({ straightMm: 13, alongMm: [3, 4, 12] });
    measure.take(at([0, 0, 0]));
    expect(measure.getState()).toMatchObject({ from: { point: [0, 0, 0] }, to: null });
  });

  it('goes to the middle of a round rim where there is one', () => {
    const measure = createOnMeasure(createHandStore());
    measure.take({ ...at([1, 0, 0]), rim: { centre: [0, 0, 0], axis: [0, 0, 1], radiusMm: 7 } });
    expect(measure.getState().from).toEqual({ point: [0, 0, 0], part: 'block', rimRadiusMm: 7 });
  });

  it('waits in the hand for a bay that is still on its way, and not for another project', async () => {
    const { bench } = sampleBench({ openProject: SAMPLE_BAY });
    bench.onMeasure.begin();
    await bench.openGiven();
    expect(bench.hand.getState().tool.kind).toBe('measure');
    await bench.openDemo();
    expect(bench.hand.getState().tool.kind).toBe('none');
  });

  it('is forgotten with the tool', () => {
    const hand = createHandStore();
    const measure = createOnMeasure(hand);
    measure.begin();
    measure.take(at([1, 2, 3]));
    hand.take(NO_TOOL);
    expect(measure.getState()).toEqual({ from: null, to: null });
  });
});

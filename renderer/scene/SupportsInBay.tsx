import { useStore } from 'zustand';
import type { Lay } from '../../shared/document/lay/schema.ts';
import type { Run } from '../../shared/document/project/schema.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import { shownSupports } from '../state/shownSupports.ts';
import { useBench } from '../state/useBench.ts';
import type { ScenePalette } from './palette.ts';
import { SupportBand } from './SupportBand.tsx';
import { useHoseDrag } from './useHoseDrag.ts';

interface SupportsInBayProps {
  readonly run: Run;
  /** absent = the run has no hose yet; what will hold it is shown all the same */
  readonly lay: Lay | undefined;
  readonly hoseDiameterMm: number;
  readonly bay: OpenDocument['bay'];
  readonly chosen: boolean;
  readonly palette: ScenePalette;
}

/** What holds or guides a run; the chosen run's can be taken in the hand and moved. */
export function SupportsInBay({ run, lay, hoseDiameterMm, bay, chosen, palette }: SupportsInBayProps) {
  const { hand } = useBench();
  const hold = useStore(hand, (state) => (chosen ? state.hold : null));
  const chosenSupport = useStore(hand, (state) => (chosen ? state.support : null));
  const press = useHoseDrag(bay, hoseDiameterMm);
  return shownSupports(run, lay, hold).map((support) => (
    <SupportBand
      key={support.id}
      support={support}
      hoseDiameterMm={hoseDiameterMm}
      chosen={support.id === chosenSupport}
      palette={palette}
      {...(chosen &&
        !support.proposed && {
          onPress: (event) => {
            if (hand.getState().tool.kind !== 'none') return;
            hand.set({ support: support.id });
            press(event, { support: support.id }, support.point);
          },
        })}
    />
  ));
}

import { useStore } from 'zustand';
import type { Lay } from '../../shared/document/lay/schema.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import { handLay } from '../state/handLay.ts';
import { isStale } from '../state/runState.ts';
import { useBench, useSession } from '../state/useBench.ts';
import { AdapterBody } from './AdapterBody.tsx';
import { HoseEnd } from './HoseEnd.tsx';
import { HoseTube } from './HoseTube.tsx';
import { LockedStretch } from './LockedStretch.tsx';
import type { ScenePalette } from './palette.ts';
import { SupportsInBay } from './SupportsInBay.tsx';
import { useHoseDrag } from './useHoseDrag.ts';
import { WrenchSector } from './WrenchSector.tsx';

interface RunInBayProps {
  readonly lay: Lay;
  readonly open: OpenDocument;
  readonly chosen: boolean;
  readonly palette: ScenePalette;
}

/** One laid run: its hose, ends and supports. The chosen one can be taken in the hand. */
export function RunInBay({ lay: laid, open, chosen, palette }: RunInBayProps) {
  const { session, hand, byHand } = useBench();
  const run = open.history.present.runs.find((r) => r.id === laid.run);
  const shape = useStore(hand, (state) => (chosen ? state.shape : null));
  const lay = handLay(laid, shape);
  const ridden = useSession(({ eyeMm }) => chosen && eyeMm !== null);
  const wrench = useSession((state) => (chosen ? state.wrench : null));
  const nut = wrench === null || shape !== null ? undefined : lay.hands?.[wrench];
  const press = useHoseDrag(open.bay, lay.outsideDiameterMm);
  const hose = open.tables.hoses.find((h) => h.id === run?.hose);
  const endOf = (id: string | undefined) => open.tables.ends.find((end) => end.id === id);
  const choose = (arcLengthMm: number): void => {
    const { tool } = hand.getState();
    if (tool.kind !== 'none' && tool.kind !== 'put') return;
    if (chosen && tool.kind === 'put') byHand.putAt(tool.support, arcLengthMm);
    else session.choose(laid.run);
  };
  // The eye is inside it.
  if (ridden) return null;
  return (
    <group>
      <HoseTube
        lay={lay}
        cover={hose?.cover ?? 'rubber'}
        selected={chosen}
        stale={shape === null && isStale(open, laid.run)}
        outlineColour={palette.selected}
        chalkColour={palette.tag.paper}
        onChoose={choose}
        {...(chosen && {
          onPress: (event, arcLengthMm) => {
            if (hand.getState().tool.kind === 'none') press(event, { arcLengthMm }, event.point.toArray());
          },
        })}
      />
      {run !== undefined && (
        <SupportsInBay
          run={run}
          lay={lay}
          hoseDiameterMm={lay.outsideDiameterMm}
          bay={open.bay}
          chosen={chosen}
          palette={palette}
        />
      )}
      {run?.locks?.map((lock) => (
        <LockedStretch key={lock.id} lock={lock} hoseDiameterMm={lay.outsideDiameterMm} palette={palette} />
      ))}
      {[...(lay.ends.a.adapters ?? []), ...(lay.ends.b.adapters ?? [])].map((pose) => (
        <AdapterBody
          key={`${pose.id} ${pose.points.join(' ')}`}
          pose={pose}
          material={open.tables.adapters.find(({ id }) => id === pose.id)?.material}
        />
      ))}
      {nut !== undefined && <WrenchSector nut={nut} palette={palette} />}
      <HoseEnd pose={lay.ends.a} end={endOf(run?.a.end)} hoseDiameterMm={lay.outsideDiameterMm} />
      <HoseEnd pose={lay.ends.b} end={endOf(run?.b.end)} hoseDiameterMm={lay.outsideDiameterMm} />
    </group>
  );
}

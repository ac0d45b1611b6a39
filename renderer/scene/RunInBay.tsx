import { useStore } from 'zustand';
import type { Vec3 } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import { handLay } from '../state/handLay.ts';
import type { Hold } from '../state/handStore.ts';
import { isStale } from '../state/runState.ts';
import { shownSupports } from '../state/shownSupports.ts';
import { useBench } from '../state/useBench.ts';
import { HoseEnd } from './HoseEnd.tsx';
import { HoseTube } from './HoseTube.tsx';
import { onSurface, onViewPlane } from './handTarget.ts';
import { LockedStretch } from './LockedStretch.tsx';
import type { ScenePalette } from './palette.ts';
import { pickBay } from './pickBay.ts';
import { SupportBand } from './SupportBand.tsx';
import { type BayDrag, useBayDrag } from './useBayDrag.ts';

interface RunInBayProps {
  readonly lay: Lay;
  readonly open: OpenDocument;
  readonly chosen: boolean;
  readonly palette: ScenePalette;
}

/** mm that a hose held on a surface stands off it beside its own radius: the foot of a cushioned clamp (from memory). */
const STAND_OFF_MM = 5;

/** One laid run: its hose, ends and supports. The chosen one can be taken in the hand. */
export function RunInBay({ lay: laid, open, chosen, palette }: RunInBayProps) {
  const { session, hand, byHand } = useBench();
  const project = open.history.present;
  const run = project.runs.find((r) => r.id === laid.run);
  const shape = useStore(hand, (state) => (chosen ? state.shape : null));
  const hold = useStore(hand, (state) => (chosen ? state.hold : null));
  const chosenSupport = useStore(hand, (state) => (chosen ? state.support : null));
  const press = useBayDrag();
  const lay = handLay(laid, shape);
  const hose = open.tables.hoses.find((h) => h.id === run?.hose);
  const endOf = (id: string | undefined) => open.tables.ends.find((end) => end.id === id);

  const dragOf = (at: Hold['at'], from: Vec3): BayDrag => ({
    begin: () => byHand.grasp(at, from),
    move: (ray, eyeAlong, event) => {
      const { parts } = session.getState();
      const hit =
        event.altKey && open.bay !== null ? pickBay(open.bay, ray, (part) => isSeenThrough(parts[part])) : null;
      const to =
        hit === null ? onViewPlane(ray, from, eyeAlong) : onSurface(hit, lay.outsideDiameterMm / 2 + STAND_OFF_MM);
      byHand.drag(to, event.shiftKey);
    },
    end: (moved, event) => {
      if (moved && event.type === 'pointerup') void byHand.release();
      else if (moved) byHand.letGo();
    },
  });

  const choose = (arcLengthMm: number): void => {
    const { tool } = hand.getState();
    if (tool.kind === 'seat' || tool.kind === 'skin') return;
    if (chosen && tool.kind === 'put') byHand.putAt(tool.support, arcLengthMm);
    else session.choose(laid.run);
  };
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
            if (hand.getState().tool.kind === 'none') press(event, dragOf({ arcLengthMm }, event.point.toArray()));
          },
        })}
      />
      {run !== undefined &&
        shownSupports(run, lay, hold).map((support) => (
          <SupportBand
            key={support.id}
            support={support}
            hoseDiameterMm={lay.outsideDiameterMm}
            chosen={support.id === chosenSupport}
            palette={palette}
            {...(chosen &&
              !support.proposed && {
                onPress: (event) => {
                  hand.set({ support: support.id });
                  press(event, dragOf({ support: support.id }, support.point));
                },
              })}
          />
        ))}
      {run?.locks?.map((lock) => (
        <LockedStretch key={lock.id} lock={lock} hoseDiameterMm={lay.outsideDiameterMm} palette={palette} />
      ))}
      <HoseEnd pose={lay.ends.a} end={endOf(run?.a.end)} hoseDiameterMm={lay.outsideDiameterMm} />
      <HoseEnd pose={lay.ends.b} end={endOf(run?.b.end)} hoseDiameterMm={lay.outsideDiameterMm} />
    </group>
  );
}

function isSeenThrough(view: string | undefined): boolean {
  return view === 'off' || view === 'ghost';
}

import { useStore } from 'zustand';
import type { Port, Project } from '../../shared/document/project/schema.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import { NO_TOOL } from '../state/handStore.ts';
import type { Step } from '../state/sessionStore.ts';
import { useBench } from '../state/useBench.ts';
import { aimAt, withRim } from './aimAt.ts';
import { PortMark } from './PortMark.tsx';
import type { ScenePalette } from './palette.ts';
import { useBayDrag } from './useBayDrag.ts';

interface PortMarksProps {
  readonly project: Project;
  readonly bay: NonNullable<OpenDocument['bay']>;
  readonly step: Step;
  readonly palette: ScenePalette;
}

/** mm of bore a dash size: sixteenths of an inch of the tube it was named for. */
const RADIUS_PER_DASH_MM = 25.4 / 32;

/** While ports are worked on each stands as a mark on its seat; one that is pulled over the bay sits down where it is let go. */
export function PortMarks({ project, bay, step, palette }: PortMarksProps) {
  const { hand, onBay, session } = useBench();
  const chosen = useStore(hand, (state) => state.port);
  const press = useBayDrag();
  if (step !== 'ports') return null;
  const drag = (port: Port) => ({
    begin: () => hand.take({ kind: 'seat', port: port.id }),
    move: (ray: Parameters<typeof aimAt>[1]) => {
      if (hand.getState().tool.kind === 'seat') hand.set({ aim: aimAt(bay, ray, session.getState().parts) });
    },
    end: (moved: boolean) => {
      const { tool, aim } = hand.getState();
      if (moved && tool.kind === 'seat' && aim !== null) onBay.seat(port.id, withRim(bay, aim));
      if (moved) hand.take(NO_TOOL);
    },
  });
  return project.ports.map((port) => (
    <PortMark
      key={port.id}
      at={port.seatPoint}
      axis={port.axis}
      up={port.up}
      radiusMm={Math.max(3, port.dash * RADIUS_PER_DASH_MM)}
      colour={port.id === chosen ? palette.selected : palette.portDot}
      solid={port.id === chosen}
      onPress={(event) => {
        if (hand.getState().tool.kind !== 'none') return;
        hand.set({ port: port.id });
        press(event, drag(port));
      }}
    />
  ));
}

import type { ThreeEvent } from '@react-three/fiber';
import { Fragment } from 'react';
import { useStore } from 'zustand';
import { triple } from '../../shared/base/vec3.ts';
import type { Port, Project } from '../../shared/document/project/schema.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import { freePorts } from '../state/edits/newRun.ts';
import { NO_TOOL } from '../state/handStore.ts';
import { portSeat } from '../state/portSeat.ts';
import type { Step } from '../state/sessionStore.ts';
import { useBench, useDocument } from '../state/useBench.ts';
import { AdapterBody } from './AdapterBody.tsx';
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

/**
 * While ports are worked on each stands as a mark on its seat; one that is pulled over the bay sits down where it is let go. While
 * a run is stated the ports it may join stand there, to be picked.
 */
export function PortMarks({ project, bay, step, palette }: PortMarksProps) {
  const { hand, onBay, section, session } = useBench();
  const chosen = useStore(hand, (state) => state.port);
  const pull = useBayDrag();
  const joins = useStore(hand, (state) => state.joins);
  if (step !== 'ports' && joins === null) return null;
  const shown = joins === null ? project.ports : freePorts(project);
  const isChosen = (port: Port): boolean =>
    joins === null ? port.id === chosen : port.id === joins.a || port.id === joins.b;
  const press = (event: ThreeEvent<PointerEvent>, port: Port): void => {
    // While a run is stated ports are picked by their tags, and stay where they are.
    if (hand.getState().tool.kind !== 'none' || joins !== null) return;
    hand.set({ port: port.id });
    pull(event, drag(port));
  };
  const drag = (port: Port) => ({
    begin: () => hand.take({ kind: 'seat', port: port.id }),
    move: (ray: Parameters<typeof aimAt>[1]) => {
      if (hand.getState().tool.kind === 'seat')
        hand.set({ aim: aimAt(bay, ray, session.getState().parts, section.getState()) });
    },
    end: (moved: boolean) => {
      const { tool, aim } = hand.getState();
      if (moved && tool.kind === 'seat' && aim !== null) onBay.seat(port.id, withRim(bay, aim));
      if (moved) hand.take(NO_TOOL);
    },
  });
  return shown.map((port) => (
    <Fragment key={port.id}>
      <StackOnPort port={port} colour={isChosen(port) ? palette.selected : palette.portDot} />
      <PortMark
        at={port.seatPoint}
        axis={port.axis}
        up={port.up}
        radiusMm={Math.max(3, port.dash * RADIUS_PER_DASH_MM)}
        colour={isChosen(port) ? palette.selected : palette.portDot}
        solid={isChosen(port)}
        onPress={(event) => press(event, port)}
      />
    </Fragment>
  ));
}

/** The adapters on a port, and a mark on the seat that they offer. */
function StackOnPort({ port, colour }: { port: Port; colour: string }) {
  const adapters = useDocument((state) => state.open?.tables.adapters) ?? [];
  const { port: seat, stack } = portSeat(port, adapters);
  if (stack === undefined) return null;
  return (
    <>
      {stack.fitted.map((fitted, i) => (
        <AdapterBody
          // biome-ignore lint/suspicious/noArrayIndexKey: the same adapter may stand on a port twice
          key={i}
          pose={{
            points: fitted.points.map(triple),
            diameterMm: fitted.adapter.diameterMm,
            ...(fitted.branch === undefined ? {} : { branch: fitted.branch.map(triple) }),
          }}
          material={fitted.adapter.material}
        />
      ))}
      <PortMark
        at={seat.seatPoint}
        axis={seat.axis}
        up={seat.up}
        radiusMm={Math.max(3, seat.dash * RADIUS_PER_DASH_MM)}
        colour={colour}
        solid={false}
      />
    </>
  );
}

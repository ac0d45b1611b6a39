import { Canvas } from '@react-three/fiber';
import { useMemo } from 'react';
import type { WebGLRendererParameters } from 'three';
import { useStore } from 'zustand';
import type { OpenDocument } from '../state/documentStore.ts';
import { orderFindings } from '../state/findingOrder.ts';
import { fittingSequence } from '../state/onFitting.ts';
import { useBench, useDocument, useJobs, useSession } from '../state/useBench.ts';
import { BayAim } from './BayAim.tsx';
import { BayMesh } from './BayMesh.tsx';
import { CameraWork } from './CameraWork.tsx';
import { ContextWatch } from './ContextWatch.tsx';
import { FindingFlags } from './FindingFlags.tsx';
import { GhostInBay } from './GhostInBay.tsx';
import { HandThread } from './HandThread.tsx';
import { HoverMarker } from './HoverMarker.tsx';
import { LainInBay } from './LainInBay.tsx';
import { MeasureInBay } from './MeasureInBay.tsx';
import { PortMarks } from './PortMarks.tsx';
import { PortTags } from './PortTags.tsx';
import { PoseInBay } from './PoseInBay.tsx';
import { SCENE_PALETTES, type ScenePalette } from './palette.ts';
import { RodInBay } from './RodInBay.tsx';
import { RunInBay } from './RunInBay.tsx';
import { SupportsInBay } from './SupportsInBay.tsx';
import { SweptSkin } from './SweptSkin.tsx';
import { taggedPorts } from './taggedPorts.ts';
import { patientRenderer } from './three/patientRenderer.ts';

/** mm. Drawn for a hose that no table has. */
const LOOSE_MM = 16;

/**
 * The bay with everything that is on it. Drawn when something changes, never on a clock. One canvas for all bays that are
 * opened: to give a canvas up while it still draws holds the whole window until it has drawn.
 */
export function BayScene() {
  const open = useDocument((state) => state.open);
  const theme = useSession((state) => state.theme);
  const { session } = useBench();
  if (open === null) return null;
  return (
    <Canvas
      frameloop="demand"
      dpr={[1, 2]}
      flat
      gl={(parameters) => patientRenderer(parameters as WebGLRendererParameters)}
      camera={{ up: [0, 0, 1], fov: 32, position: [-1000, -1500, 1000] }}
      onPointerMissed={() => session.set({ finding: null })}
    >
      {open.bay !== null && <OnBay open={open} bay={open.bay} palette={SCENE_PALETTES[theme]} />}
    </Canvas>
  );
}

interface OnBayProps {
  readonly open: OpenDocument;
  readonly bay: NonNullable<OpenDocument['bay']>;
  readonly palette: ScenePalette;
}

function OnBay({ open, bay, palette }: OnBayProps) {
  const chosen = useSession((state) => state.run);
  const step = useSession((state) => state.step);
  const { onFitting, onRuns, hand } = useBench();
  const joins = useStore(hand, (state) => state.joins);
  const fitted = useStore(onFitting, ({ on }) => on);
  const lain = useJobs((state) => state.lain);
  const findings = useMemo(() => orderFindings(open.report?.findings ?? []), [open.report]);
  const project = open.history.present;
  const lays = open.report?.lays ?? [];
  const on = fitted === null ? null : new Set(fittingSequence(open.report).slice(0, fitted));
  const drawn = lays.filter(
    (lay) => lay.centreline.points.length > 1 && on?.has(lay.run) !== false && lain[lay.run] === undefined,
  );
  const loose =
    on !== null || drawn.some((lay) => lay.run === chosen) ? undefined : project.runs.find((run) => run.id === chosen);
  // While the hoses go on one by one they are looked at, not judged.
  const told = on === null ? findings : [];
  const shownFindings = step === 'checks' ? told : told.filter(({ finding }) => finding.run === chosen);
  const choosePort = (port: string): void => {
    if (hand.getState().tool.kind === 'none') hand.set({ port });
  };
  return (
    <>
      <hemisphereLight args={[palette.skyLight, palette.groundLight, 1.5]} position={[0, 0, 1]} />
      <directionalLight position={[-0.35, -0.8, 1]} intensity={2.1} color={palette.skyLight} />
      <directionalLight position={[0.9, 0.3, 0.3]} intensity={0.35} color={palette.skyLight} />
      <BayMesh bay={bay} project={project} lays={lays} palette={palette} />
      <SweptSkin palette={palette} />
      <LainInBay hoses={Object.values(lain)} palette={palette} />
      {drawn.map((lay) => (
        <RunInBay key={lay.run} lay={lay} open={open} chosen={lay.run === chosen} palette={palette} />
      ))}
      {loose !== undefined && (
        <SupportsInBay
          run={loose}
          lay={undefined}
          hoseDiameterMm={open.tables.hoses.find((hose) => hose.id === loose.hose)?.outsideDiameterMm ?? LOOSE_MM}
          bay={bay}
          chosen
          palette={palette}
        />
      )}
      <HandThread colour={palette.selected} />
      {drawn
        .filter((lay) => lay.run === chosen)
        .map((lay) => (
          <GhostInBay key={lay.run} lay={lay} palette={palette} />
        ))}
      <PoseInBay lays={drawn} chosen={chosen} palette={palette} />
      <RodInBay colour={palette.selected} />
      <MeasureInBay colour={palette.selected} />
      <BayAim bay={bay} palette={palette} />
      <PortMarks project={project} bay={bay} step={step} palette={palette} />
      <PortTags
        ports={taggedPorts(project, chosen, step, joins)}
        palette={palette}
        onPick={joins !== null ? onRuns.pick : step === 'ports' ? choosePort : undefined}
      />
      <FindingFlags findings={shownFindings} palette={palette} />
      <HoverMarker lays={lays} colour={palette.selected} />
      <CameraWork bay={bay} lays={lays} />
      <ContextWatch />
    </>
  );
}

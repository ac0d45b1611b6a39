import { Canvas } from '@react-three/fiber';
import { useMemo } from 'react';
import { orderFindings } from '../state/findingOrder.ts';
import { isStale } from '../state/runState.ts';
import { useBench, useDocument, useSession } from '../state/useBench.ts';
import { BayMesh } from './BayMesh.tsx';
import { CameraWork } from './CameraWork.tsx';
import { ContextWatch } from './ContextWatch.tsx';
import { FindingFlags } from './FindingFlags.tsx';
import { HoseEnd } from './HoseEnd.tsx';
import { HoseTube } from './HoseTube.tsx';
import { HoverMarker } from './HoverMarker.tsx';
import { PortTags } from './PortTags.tsx';
import { SCENE_PALETTES } from './palette.ts';
import { SupportBand } from './SupportBand.tsx';
import { taggedPorts } from './taggedPorts.ts';

/** The bay with everything that is on it. Drawn when something changes, never on a clock. */
export function BayScene() {
  const open = useDocument((state) => state.open);
  const theme = useSession((state) => state.theme);
  const chosen = useSession((state) => state.run);
  const step = useSession((state) => state.step);
  const { session } = useBench();
  const palette = SCENE_PALETTES[theme];
  const findings = useMemo(() => orderFindings(open?.report?.findings ?? []), [open?.report]);
  if (open === null || open.bay === null) return null;
  const project = open.history.present;
  const lays = open.report?.lays ?? [];
  const drawn = lays.filter((lay) => lay.centreline.points.length > 1);
  const shownFindings = step === 'checks' ? findings : findings.filter(({ finding }) => finding.run === chosen);
  return (
    <Canvas
      frameloop="demand"
      dpr={[1, 2]}
      flat
      gl={{ antialias: true, alpha: true, powerPreference: 'high-performance' }}
      camera={{ up: [0, 0, 1], fov: 32, position: [-1000, -1500, 1000] }}
      onPointerMissed={() => session.set({ finding: null })}
    >
      <hemisphereLight args={[palette.skyLight, palette.groundLight, 1.5]} position={[0, 0, 1]} />
      <directionalLight position={[-0.35, -0.8, 1]} intensity={2.1} color={palette.skyLight} />
      <directionalLight position={[0.9, 0.3, 0.3]} intensity={0.35} color={palette.skyLight} />
      <BayMesh bay={open.bay} skins={project.bay.skins} palette={palette} />
      {drawn.map((lay) => {
        const run = project.runs.find((r) => r.id === lay.run);
        const hose = open.tables.hoses.find((h) => h.id === run?.hose);
        const endOf = (id: string | undefined) => open.tables.ends.find((end) => end.id === id);
        return (
          <group key={lay.run}>
            <HoseTube
              lay={lay}
              cover={hose?.cover ?? 'rubber'}
              selected={lay.run === chosen}
              stale={isStale(open, lay.run)}
              outlineColour={palette.selected}
              chalkColour={palette.tag.paper}
            />
            {lay.supports
              .filter((support) => support.kind !== 'waypoint')
              .map((support) => (
                <SupportBand
                  key={support.id}
                  support={support}
                  hoseDiameterMm={lay.outsideDiameterMm}
                  palette={palette}
                />
              ))}
            <HoseEnd pose={lay.ends.a} end={endOf(run?.a.end)} hoseDiameterMm={lay.outsideDiameterMm} />
            <HoseEnd pose={lay.ends.b} end={endOf(run?.b.end)} hoseDiameterMm={lay.outsideDiameterMm} />
          </group>
        );
      })}
      <PortTags ports={taggedPorts(project, chosen, step)} palette={palette} />
      <FindingFlags findings={shownFindings} palette={palette} />
      <HoverMarker lays={lays} colour={palette.selected} />
      <CameraWork bay={open.bay} />
      <ContextWatch />
    </Canvas>
  );
}

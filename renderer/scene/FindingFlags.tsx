import { useStore } from 'zustand';
import type { NumberedFinding } from '../state/findingOrder.ts';
import { useBench } from '../state/useBench.ts';
import type { ScenePalette } from './palette.ts';
import { ScreenLabel } from './ScreenLabel.tsx';
import { flagLabel } from './three/labelTexture.ts';
import { useDisposed } from './useDisposed.ts';

interface FindingFlagsProps {
  readonly findings: readonly NumberedFinding[];
  readonly palette: ScenePalette;
}

/** A numbered tape flag pinned to the place of each finding that has one. */
export function FindingFlags({ findings, palette }: FindingFlagsProps) {
  const { hand } = useBench();
  // What was found is of the hose as it was laid; while the hand has it elsewhere its flags would stand in the air.
  const inHand = useStore(hand, (state) => state.shape?.run ?? null);
  return findings
    .filter(({ finding }) => finding.at !== undefined && finding.run !== inHand)
    .map((numbered) => <Flag key={numbered.number} numbered={numbered} palette={palette} />);
}

function Flag({ numbered, palette }: { numbered: NumberedFinding; palette: ScenePalette }) {
  const bench = useBench();
  const { number, finding } = numbered;
  const made = useDisposed(() => {
    const label = flagLabel(number, finding.severity, palette.flag[finding.severity]);
    return { label, dispose: () => label.texture.dispose() };
  }, [number, finding.severity, palette]);
  if (finding.at === undefined) return null;
  const order = finding.severity === 'stop' ? 32 : 30;
  return (
    <ScreenLabel
      label={made.label}
      at={finding.at.point}
      foot={[0, 0]}
      order={order}
      onClick={() => bench.goToFinding(numbered)}
    />
  );
}

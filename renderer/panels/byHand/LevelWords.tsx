import { useStore } from 'zustand';
import { formatDegrees } from '../../../shared/sheets/format/index.ts';
import type { Aim } from '../../state/handStore.ts';
import { faceOf } from '../../state/onSquareUp.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';

/** How many places of the level face are picked, how far off level it lies, and the bay turned by it. */
export function LevelWords({ aim }: { aim: Aim | null }) {
  const { onSquareUp } = useBench();
  const face = faceOf(useStore(onSquareUp, ({ picks }) => picks));
  if (face.kind === 'few')
    return (
      <>
        {face.missing} more; {aim === null ? 'point at the bay' : aim.part}
      </>
    );
  if (face.kind === 'line') return <>These three lie on one line and say nothing of its tilt. Click three others.</>;
  return (
    <>
      The face lies {formatDegrees(face.offDeg)} off level as the bay stands now.{' '}
      <Button onPress={onSquareUp.level}>Turn the bay so that it is level</Button>
    </>
  );
}

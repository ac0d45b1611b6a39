import { backwardsEnd } from '../../../shared/document/lay/backwardsEnd.ts';
import type { Lay } from '../../../shared/document/lay/schema.ts';
import { formatDegrees, formatTurn } from '../../../shared/sheets/format/index.ts';
import { useBench, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Length } from '../Length.tsx';

/** What comes out where a shop reads the clock the wrong way round, in words and, on request, in the bay. */
export function BackwardsClock({ lay }: { lay: Lay }) {
  const { session } = useBench();
  const shown = useSession(({ ghost }) => ghost === 'backwards');
  const backwards = backwardsEnd(lay);
  if (backwards === undefined)
    return <p className="teach">Read the wrong way round it is the same hose: there is no mirror image to fear.</p>;
  return (
    <div className="support-buttons">
      <p className="teach">
        Read the wrong way round, {formatDegrees(backwards.clockDeg)}, END B comes out turned by{' '}
        {formatTurn(backwards.turnedDeg)}, its seat <Length mm={backwards.seatOffMm} /> from its port.
      </p>
      <Button hint="Key y" pressed={shown} onPress={() => session.set({ ghost: shown ? null : 'backwards' })}>
        {shown ? 'Hide that END B' : 'Show that END B in the bay'} <kbd>y</kbd>
      </Button>
    </div>
  );
}

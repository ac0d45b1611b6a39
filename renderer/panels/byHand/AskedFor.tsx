import type { Lay } from '../../../shared/document/lay/schema.ts';
import { SUPPORT_WORDS } from '../../../shared/document/wording/bayWords.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Length } from '../Length.tsx';

/** Clamps that the lay asks for: each can be put where it is asked for, and is then the user's. */
export function AskedFor({ lay }: { lay: Lay }) {
  const { byHand } = useBench();
  const asked = lay.supports.filter((support) => support.proposed);
  if (asked.length === 0) return null;
  return (
    <ul className="supports" aria-label="Asked for by the lay">
      {asked.map((support) => (
        <li key={support.id} className="support support-asked">
          <span className="support-name">
            {SUPPORT_WORDS[support.kind]} asked for at <Length mm={support.at.arcLengthMm} />
          </span>
          <Button
            name={`Put the ${support.kind} that is asked for`}
            onPress={() => byHand.putAt(support.kind, support.at.arcLengthMm)}
          >
            Put it there
          </Button>
        </li>
      ))}
    </ul>
  );
}

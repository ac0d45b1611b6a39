import { useStore } from 'zustand';
import type { Finding } from '../../../shared/document/lay/schema.ts';
import type { MendAnswer } from '../../../shared/document/mends/schema.ts';
import { verdictWords } from '../../../shared/document/wording/mendsWords.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Shape, type ShapeKind } from '../../widgets/Shape.tsx';
import { Length } from '../Length.tsx';
import { LeftFinding } from './LeftFinding.tsx';
import { curedWords, titleOf } from './mendText.ts';
import { type Standing, standingOf } from './standingOf.ts';

interface MendRowProps {
  readonly answer: MendAnswer;
  /** the findings that it was tried on */
  readonly before: readonly Finding[];
  readonly number: number;
  readonly mayMake: boolean;
}

/** mm. Two cut lengths nearer than this are told alike: lengths on papers go to a tenth. */
const SAME_CUT_MM = 0.05;

/** A change that mends: whether the hose may then be cut, what it cures, what it comes to at the saw, what it brings and leaves. */
export function MendRow({ answer, before, number, mayMake }: MendRowProps) {
  const { onMends } = useBench();
  const shown = useStore(onMends, (state) => state.shown === number);
  const { mend, cured, lay, longerMm, toGet, left, brings = [] } = answer;
  const standing = (finding: Finding): Standing => standingOf(finding, brings, before);
  const still = left.filter((finding) => standing(finding) === 'as before');
  return (
    <li className="mend-row">
      <span className="mend-verdict">
        <Shape kind={verdictShape(answer)} size={18} /> {verdictWords(answer)}
      </span>
      <strong>{titleOf(mend.words)}</strong>
      {[...new Set(cured.map(({ words }) => curedWords(words)))].map((words) => (
        <span key={words}>{words}</span>
      ))}
      <span>
        Cut <Length mm={lay.cutLengthMm} rounding="up" both />
        {Math.abs(longerMm) < SAME_CUT_MM ? (
          ', as long as now'
        ) : (
          <>
            , <Length mm={Math.abs(longerMm)} /> {longerMm > 0 ? 'longer' : 'shorter'}
          </>
        )}
      </span>
      {toGet.length > 0 && <span className="mend-line">To get: {toGet.join(', ')}</span>}
      {brings.length > 0 && (
        <ul className="mend-left" aria-label="What it brings or makes worse">
          {brings.map((finding) => (
            <LeftFinding key={`${finding.check} ${finding.message}`} finding={finding} standing={standing(finding)} />
          ))}
        </ul>
      )}
      {still.length > 0 && (
        <details>
          <summary>What stays as it is: {still.length}</summary>
          <ul className="mend-left" aria-label="What stays as it is">
            {still.map((finding) => (
              <LeftFinding key={`${finding.check} ${finding.message}`} finding={finding} standing="as before" />
            ))}
          </ul>
        </details>
      )}
      <div className="mend-acts">
        <Button
          pressed={shown}
          name={`Show in the bay: ${mend.words}`}
          onPress={() => onMends.show(shown ? null : number)}
        >
          Show in the bay
        </Button>
        <Button disabled={!mayMake} name={`Make it so: ${mend.words}`} onPress={() => void onMends.make(number)}>
          Make it so
        </Button>
      </div>
    </li>
  );
}

function verdictShape({ stopsLeft, looksLeft }: MendAnswer): ShapeKind {
  return stopsLeft > 0 ? 'octagon' : looksLeft > 0 ? 'triangle' : 'tick';
}

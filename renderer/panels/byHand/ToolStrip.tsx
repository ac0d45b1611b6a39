import { useStore } from 'zustand';
import type { Project } from '../../../shared/document/project/schema.ts';
import { SUPPORT_WORDS } from '../../../shared/document/wording/bayWords.ts';
import type { Aim, Tool } from '../../state/handStore.ts';
import { measured } from '../../state/onMeasure.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Length } from '../Length.tsx';
import { LevelWords } from './LevelWords.tsx';
import { MeasureWords } from './MeasureWords.tsx';

/** What the next press does, what is under the pointer, and the way out. */
export function ToolStrip() {
  const { hand } = useBench();
  const tool = useStore(hand, (state) => state.tool);
  const aim = useStore(hand, (state) => state.aim);
  const isMarked = useStore(hand, (state) => state.aim !== null && state.middle > 0);
  const project = useDocument((state) => state.open?.history.present);
  const isMeasured = useStore(useBench().onMeasure, (state) => measured(state) !== null);
  if (tool.kind === 'none') return null;
  const group = groupName(tool, project);
  return (
    <section className="slip tool-strip" aria-label="In the hand" aria-live="polite">
      <div className="work-words">
        <b>
          {tool.kind === 'measure' && isMeasured
            ? 'Measured; click another two places to measure anew'
            : toolWords(tool, project?.ports.find(({ id }) => tool.kind === 'seat' && id === tool.port)?.name, group)}
        </b>
        <span>
          <AimWords tool={tool} aim={aim} />
          {isMarked && '; key z takes it'}
        </span>
      </div>
      <Button hint="Escape" onPress={() => hand.take({ kind: 'none' })}>
        Put it down
      </Button>
    </section>
  );
}

/** What parts are put into: the name of a skin or a body. */
function groupName(tool: Tool, project: Project | undefined): string | undefined {
  if (tool.kind === 'skin') return project?.bay.skins.find(({ id }) => id === tool.skin)?.name;
  if (tool.kind === 'body') return project?.bay.bodies.find(({ id }) => id === tool.body)?.name;
  return undefined;
}

function toolWords(tool: Tool, port: string | undefined, group: string | undefined): string {
  switch (tool.kind) {
    case 'none':
      return '';
    case 'put':
      return `${SUPPORT_WORDS[tool.support]}: click the hose where it goes, in the bay or on the straight view`;
    case 'seat':
      return port === undefined ? 'New port: click where the hose joins' : `${port}: click where it goes`;
    case 'rod':
      return 'Bent rod: click along it, from END A to END B';
    case 'measure':
      return 'Measure: click two places';
    case 'level':
      return 'Level the bay: click three places on a face that is truly level, far apart';
    case 'skin':
      return `Click each part that is “${group ?? 'plain'}”`;
    case 'body':
      return `Click each part that moves with “${group ?? 'the chassis'}”`;
  }
}

function AimWords({ tool, aim }: { tool: Tool; aim: Aim | null }) {
  const { onBay } = useBench();
  if (tool.kind === 'put') return 'The chosen run’s hose is the outlined one.';
  if (tool.kind === 'rod') return <RodWords />;
  if (tool.kind === 'measure') return <MeasureWords aim={aim} />;
  if (tool.kind === 'level') return <LevelWords aim={aim} />;
  if (aim === null) return 'Point at the bay, or mark the middle of the picture by key z.';
  if (tool.kind === 'skin' || tool.kind === 'body')
    return (
      <>
        {aim.part}: {tool.kind === 'skin' ? onBay.skinOf(aim.part) : onBay.bodyOf(aim.part)}
      </>
    );
  if (aim.rim === undefined) return aim.part;
  return aim.rim === null ? (
    <>{aim.part}: no round rim here, the surface’s own direction is taken</>
  ) : (
    <>
      {aim.part}: round rim, Ø <Length mm={aim.rim.radiusMm * 2} />
    </>
  );
}

function RodWords() {
  const count = useStore(useBench().onRod, ({ picks }) => picks.length);
  return count === 0 ? 'Begin where END A will be.' : `${count} points. Backspace takes the last one back.`;
}

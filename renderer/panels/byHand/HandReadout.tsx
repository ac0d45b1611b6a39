import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { HandShape } from '../../../shared/document/hand/handChange.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { formatDegrees, isStraight } from '../../../shared/sheets/format/index.ts';
import { useBench, useDocument, useSession } from '../../state/useBench.ts';
import { Shape } from '../../widgets/Shape.tsx';
import { Length } from '../Length.tsx';
import { thingName } from '../runs/Nearest.tsx';

/** px beside the pointer, and between the slip and the window's edge. */
const BESIDE_PX = 22;
const EDGE_PX = 8;

/** A slip that goes with the pointer while the hand has hold of the hose: what it would be cut to, and what it breaks. */
export function HandReadout() {
  const { hand } = useBench();
  const held = useStore(hand, (state) => state.hold !== null);
  const run = useSession((session) => session.run);
  const project = useDocument((state) => state.open?.history.present);
  const laid = useDocument((state) => state.open?.report?.lays.some((lay) => lay.run === run) === true);
  if (!held || project === undefined) return null;
  return <Slip project={project} laid={laid} />;
}

function Slip({ project, laid }: { project: Project; laid: boolean }) {
  const { hand } = useBench();
  const slip = useRef<HTMLElement>(null);
  const shape = useStore(hand, (state) => state.shape);
  const trouble = useStore(hand, (state) => state.trouble);
  const clamp = useStore(hand, (state) => state.hold?.clamp === true);
  const ofHose = useStore(hand, (state) => state.hold !== null && 'arcLengthMm' in state.hold.at);
  useEffect(() => {
    const follow = (event: PointerEvent): void => {
      const box = slip.current;
      if (box === null) return;
      const { width, height } = box.getBoundingClientRect();
      const right = event.clientX + BESIDE_PX + width < window.innerWidth - EDGE_PX;
      const x = right ? event.clientX + BESIDE_PX : event.clientX - BESIDE_PX - width;
      const above = event.clientY - BESIDE_PX - height;
      const y = above > EDGE_PX ? above : Math.min(event.clientY + BESIDE_PX, window.innerHeight - height - EDGE_PX);
      box.style.transform = `translate(${x}px, ${y}px)`;
      box.style.visibility = 'visible';
    };
    window.addEventListener('pointermove', follow);
    return () => window.removeEventListener('pointermove', follow);
  }, []);
  return (
    <aside ref={slip} className="slip readout" aria-label="The hose in the hand" aria-live="off">
      {shape !== null && <Figures shape={shape} project={project} />}
      {shape === null && trouble === null && laid && <p className="teach">taking hold</p>}
      {trouble !== null && <p className="readout-trouble">{trouble}</p>}
      <p className="readout-keys">
        {ofHose ? (
          <>
            let go: <b>{clamp ? 'clamp' : 'waypoint'}</b>
            {!clamp && ' · Shift: clamp'}
          </>
        ) : (
          'let go: it stays here'
        )}{' '}
        · Alt: on a surface · Escape: leave it
      </p>
    </aside>
  );
}

function Figures({ shape, project }: { shape: HandShape; project: Project }) {
  const { minRadius, tightest, clock } = shape;
  const tooTight = minRadius.provenAtLeastMm < minRadius.limitMm;
  const tooNear = tightest !== undefined && tightest.provenAtLeastMm < tightest.requiredMm;
  return (
    <dl>
      <div>
        <dt>Cut</dt>
        <dd>
          <Length mm={shape.cutLengthMm} rounding="up" both />
        </dd>
      </div>
      <div className={tooTight ? 'readout-broken' : undefined}>
        <dt>{tooTight && <Shape kind="octagon" size={16} />} Bend</dt>
        <dd>
          {isStraight(minRadius.radiusMm) ? (
            'straight'
          ) : (
            <>
              <Length mm={minRadius.provenAtLeastMm} rounding="down" />
              <span className="against">
                {' '}
                limit <Length mm={minRadius.limitMm} rounding="up" />
              </span>
            </>
          )}
        </dd>
      </div>
      {tightest !== undefined && (
        <div className={tooNear ? 'readout-broken' : undefined}>
          <dt>
            {tooNear && <Shape kind="octagon" size={16} />} {tightest.to.part ?? thingName(project, tightest.to)}
          </dt>
          <dd>
            <Length mm={tightest.provenAtLeastMm} rounding="down" />
            <span className="against">
              {' '}
              needs <Length mm={tightest.requiredMm} rounding="up" />
            </span>
          </dd>
        </div>
      )}
      <div>
        <dt>Clock</dt>
        <dd>{clock.kind === 'angle' ? formatDegrees(clock.deg) : 'free'}</dd>
      </div>
    </dl>
  );
}

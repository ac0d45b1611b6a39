import { useStore } from 'zustand';
import { useBench } from '../../state/useBench.ts';
import { LengthField } from '../LengthField.tsx';

/** How scans are made, and how far they are off then. */
const KINDS = [
  { mm: 1, words: 'Handheld scanner with targets', note: 'half a millimetre to one, where the surface was not shiny' },
  { mm: 10, words: 'Phone or tablet', note: 'about a centimetre, and more over a whole bay' },
  { mm: 3, words: 'Photographs put together', note: 'a few millimetres; set the scale by a length you know' },
  { mm: 0, words: 'Drawn or measured, not scanned', note: 'as good as it was drawn' },
] as const;

/** The uncertainty is added to every clearance, so that a hose keeps clear of the part and not only of its picture. */
export function UncertaintyQuestion() {
  const { onNewBay } = useBench();
  const mm = useStore(onNewBay, (state) => state.scanUncertaintyMm);
  return (
    <div className="new-bay-ask">
      <Fog mm={mm} />
      <div>
        <fieldset className="new-bay-choices">
          <legend>How was it made?</legend>
          {KINDS.map((kind) => (
            <label key={kind.words}>
              <input
                type="radio"
                name="uncertainty"
                checked={mm === kind.mm}
                onChange={() => onNewBay.set({ scanUncertaintyMm: kind.mm })}
              />
              <b>{kind.words}</b>
              <span>{kind.note}</span>
            </label>
          ))}
        </fieldset>
        <LengthField
          label="Off by at most"
          mm={mm}
          lowMm={0}
          highMm={100}
          onSet={(scanUncertaintyMm) => onNewBay.set({ scanUncertaintyMm })}
        />
        <p className="teach">
          It is added to every clearance. Usual figures, from reports of scans of rooms and cars; a length that you
          measure yourself says more.
        </p>
      </div>
    </div>
  );
}

/** px per mm in the picture: a real tube and how thick its scan may be. */
const PX_PER_MM = 4;
const TUBE_RADIUS_MM = 16;

function Fog({ mm }: { mm: number }) {
  const fog = Math.min(mm, 14) * PX_PER_MM;
  return (
    <svg className="outline" width="460" height="260" viewBox="0 0 460 260" aria-hidden="true">
      <circle cx="170" cy="130" r={TUBE_RADIUS_MM * PX_PER_MM + fog} className="fog" />
      <circle cx="170" cy="130" r={TUBE_RADIUS_MM * PX_PER_MM} className="fog-part" />
      <text x="170" y="134" textAnchor="middle" className="outline-words on-metal">
        the part
      </text>
      <path d={`M245 66 L${170 + 46 + fog * 0.7} ${130 - 46 - fog * 0.7}`} className="outline-rule" />
      <text x="250" y="60" className="outline-words">
        where its surface may be
      </text>
    </svg>
  );
}

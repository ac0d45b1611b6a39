import { useStore } from 'zustand';
import { LENGTH_UNITS, MM_PER } from '../../../shared/base/units.ts';
import type { Vec3 } from '../../../shared/base/vec3.ts';
import { formatInches, formatMm, formatNumber } from '../../../shared/sheets/format/index.ts';
import type { MeshLook } from '../../state/onNewBay.ts';
import { useBench } from '../../state/useBench.ts';
import { Outline } from './Outline.tsx';
import { viewFrom } from './views.ts';

const UNIT_WORDS = { mm: 'millimetres', cm: 'centimetres', m: 'metres', in: 'inches' } as const;
/** mm. A shop's steel rule. */
const RULE_MM = 300;

/** The numbers of a mesh file have no unit: each choice with what the scan then measures, and a rule beside it. */
export function UnitQuestion({ look }: { look: MeshLook }) {
  const { onNewBay } = useBench();
  const unit = useStore(onNewBay, (state) => state.unit);
  const upAxis = useStore(onNewBay, (state) => state.upAxis);
  const name = useStore(onNewBay, (state) => state.name);
  const side = Math.max(...look.box.max.map((v, k) => v - (look.box.min[k] as number)));
  const { right, up } = viewFrom(upAxis);
  return (
    <div className="new-bay-ask">
      <Outline
        look={look}
        right={right as Vec3}
        up={up as Vec3}
        widthPx={460}
        heightPx={300}
        rule={{ length: RULE_MM / MM_PER[unit], words: 'a 300 mm rule' }}
      />
      <div>
        <fieldset className="new-bay-choices">
          <legend>The numbers in the file are</legend>
          {LENGTH_UNITS.map((one) => (
            <label key={one}>
              <input type="radio" name="unit" checked={unit === one} onChange={() => onNewBay.set({ unit: one })} />
              <b>{UNIT_WORDS[one]}</b>
              <span>{sizeWords(side * MM_PER[one])} along its longest side</span>
              {one === look.unit && <i>most likely</i>}
            </label>
          ))}
        </fieldset>
        <p className="teach">
          Once it is on the bench, measure a length you know and set the scale by it: “Measure”, then “In truth it is”.
        </p>
        <label className="new-bay-name">
          What shall the bay be called?
          <input value={name} onChange={(event) => onNewBay.set({ name: event.target.value })} />
        </label>
      </div>
    </div>
  );
}

/** mm. From here on a size is told in metres: nobody reads 1600000.0 mm. */
const IN_METRES_FROM_MM = 10_000;

/** How large a scan is, as one would say it: `1600.0 mm (63 in)`, `16 m`. */
function sizeWords(mm: number): string {
  return mm < IN_METRES_FROM_MM ? `${formatMm(mm)} (${formatInches(mm)})` : `${formatNumber(mm / 1000, 0)} m`;
}

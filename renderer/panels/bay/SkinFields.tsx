import { useEffect, useState } from 'react';
import { SKIN_KINDS, SKIN_MATERIALS, type Skin, type SkinMaterial } from '../../../shared/document/project/schema.ts';
import { MATERIAL_WORDS, SKIN_WORDS } from '../../../shared/document/wording/bayWords.ts';
import { changeSkin, removeSkin } from '../../state/edits/skinEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { NumberField } from '../../widgets/NumberField.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { LengthField } from '../LengthField.tsx';
import { TemperatureField } from '../ServiceField.tsx';
import { SkinMoves } from './SkinMoves.tsx';

export const KIND_OPTIONS = SKIN_KINDS.map((kind) => ({ value: kind, label: SKIN_WORDS[kind] }));

const MATERIAL_OPTIONS = [
  { value: '', label: 'Not stated' },
  ...SKIN_MATERIALS.map((value) => ({ value, label: MATERIAL_WORDS[value] })),
];

/** What a skin is, to be changed; folded away, since it is seldom. */
export function SkinFields({ skin }: { skin: Skin }) {
  const { document, session } = useBench();
  /** What its parts sweep is drawn in the bay as long as its values are open. */
  const showSwept = (open: boolean): void =>
    session.set(({ skin: shown }) => ({ skin: open ? skin.id : shown === skin.id ? null : shown }));
  useEffect(
    () => () => session.set(({ skin: shown }) => (shown === skin.id ? { skin: null } : {})),
    [session, skin.id],
  );
  // A skin becomes hot only with its temperature; until that is stated the choice stands here alone.
  const [asHot, setAsHot] = useState(false);
  const kind = asHot ? 'hot' : skin.kind;
  const change = (what: string, to: Parameters<typeof changeSkin>[2], join = false): void =>
    document.edit(`${what} of ${skin.name}`, (project) => changeSkin(project, skin.id, to), join);
  return (
    <details className="skin-fields" onToggle={(event) => showSwept(event.currentTarget.open)}>
      <summary>Its values</summary>
      <div className="changes">
        <TextField label="Name" value={skin.name} onSet={(name) => change('name', { name })} />
        <Choice
          label="What it is"
          value={kind}
          options={KIND_OPTIONS}
          onChoose={(chosen) => {
            setAsHot(chosen === 'hot' && skin.surfaceTemperatureC === undefined);
            change('kind', { kind: chosen as Skin['kind'] });
          }}
        />
        {kind === 'hot' && (
          <>
            <SurfaceTemperature
              value={skin.surfaceTemperatureC ?? null}
              onSet={(surfaceTemperatureC) => {
                setAsHot(false);
                change('temperature', { kind: 'hot', surfaceTemperatureC }, true);
              }}
            />
            {!asHot && (
              <Emissivity value={skin.emissivity} onSet={(emissivity) => change('emissivity', { emissivity }, true)} />
            )}
            {asHot && <p className="teach">It is hot from when its temperature is stated.</p>}
          </>
        )}
        {kind === 'moving' && (
          <SkinMoves sweep={skin.sweep} onSet={(sweep, join) => change('movement', { sweep }, join)} />
        )}
        <Choice
          label="What it is made of"
          value={skin.material ?? ''}
          options={MATERIAL_OPTIONS}
          onChoose={(chosen) => change('material', { material: chosen === '' ? null : (chosen as SkinMaterial) })}
        />
        <label className="check">
          <input
            type="checkbox"
            checked={skin.clearanceMm === undefined}
            onChange={(event) => change('clearance', { clearanceMm: event.target.checked ? null : 0 })}
          />
          Clearance by the rule for its kind
        </label>
        {skin.clearanceMm !== undefined && (
          <LengthField
            label="Own clearance"
            mm={skin.clearanceMm}
            lowMm={0}
            highMm={500}
            onSet={(clearanceMm) => change('clearance', { clearanceMm }, true)}
          />
        )}
        <div className="support-buttons">
          <Button
            name={`Remove the skin ${skin.name}`}
            hint="Its parts are plain then; undo brings it back"
            onPress={() => document.edit('remove skin', (project) => removeSkin(project, skin.id))}
          >
            Remove this skin
          </Button>
        </div>
      </div>
    </details>
  );
}

/** Of a hot surface, running. */
export function SurfaceTemperature({ value, onSet }: { value: number | null; onSet: (c: number) => void }) {
  return <TemperatureField label="Surface temperature, running" highC={1100} value={value} onSet={onSet} />;
}

/** Of bare stainless tube a little blue; oxidised metal, which is taken where nothing is stated, has 0.8. */
const STAINLESS = 0.4;

function Emissivity({ value, onSet }: { value: number | undefined; onSet: (emissivity: number | null) => void }) {
  return (
    <>
      <label className="check">
        <input
          type="checkbox"
          checked={value === undefined}
          onChange={(event) => onSet(event.target.checked ? null : STAINLESS)}
        />
        Radiates as oxidised metal does
      </label>
      {value !== undefined && (
        <NumberField
          label="Emissivity"
          unit="of 1"
          value={value}
          low={0.02}
          high={1}
          step={0.05}
          decimals={2}
          onSet={onSet}
        />
      )}
    </>
  );
}

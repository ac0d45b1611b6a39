import { useState } from 'react';
import type { Skin } from '../../../shared/document/project/schema.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { KIND_OPTIONS, SurfaceTemperature } from './SkinFields.tsx';

const EMPTY: { readonly name: string; readonly kind: Skin['kind']; readonly hotC: number | null } = {
  name: '',
  kind: 'hot',
  hotC: null,
};

/** A skin that is not there yet; once added, the next clicks put parts into it. */
export function NewSkin() {
  const { onBay } = useBench();
  const [stating, setStating] = useState(false);
  const [{ name, kind, hotC }, setDraft] = useState(EMPTY);
  const problem =
    name === ''
      ? 'Give the skin a name.'
      : kind === 'hot' && hotC === null
        ? 'State how hot its surface gets.'
        : undefined;
  if (!stating)
    return (
      <div>
        <Button onPress={() => setStating(true)}>New skin</Button>
      </div>
    );
  const close = (): void => {
    setStating(false);
    setDraft(EMPTY);
  };
  return (
    <section className="changes new-skin" aria-label="New skin">
      <h3>New skin</h3>
      <TextField
        label="Name"
        value={name}
        mayBeEmpty
        onSet={(given) => setDraft((draft) => ({ ...draft, name: given }))}
      />
      <Choice
        label="What it is"
        value={kind}
        options={KIND_OPTIONS}
        onChoose={(chosen) => setDraft((draft) => ({ ...draft, kind: chosen as Skin['kind'] }))}
      />
      {kind === 'hot' && (
        <SurfaceTemperature value={hotC} onSet={(c) => setDraft((draft) => ({ ...draft, hotC: c }))} />
      )}
      {problem !== undefined && <p className="missing">{problem}</p>}
      <div className="support-buttons">
        <Button
          look="main"
          disabled={problem !== undefined}
          onPress={() => {
            onBay.newSkin({ name, kind, ...(kind === 'hot' && hotC !== null ? { surfaceTemperatureC: hotC } : {}) });
            close();
          }}
        >
          Add this skin
        </Button>
        <Button onPress={close}>Leave it</Button>
      </div>
    </section>
  );
}

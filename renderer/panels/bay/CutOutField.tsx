import { useId, useState } from 'react';
import { cutOut } from '../../state/edits/cutOutEdits.ts';
import type { CutBox } from '../../state/sectionStore.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Choice } from '../../widgets/Choice.tsx';

/** A scan is often one piece: what is left standing in the box becomes a part of its own, to be hot, composite or moving by itself. */
export function CutOutField({ box }: { box: CutBox }) {
  const { document, section } = useBench();
  const parts = useDocument(({ open }) => open?.bay?.parts) ?? [];
  const names = [...new Set(parts.map(({ name }) => name))];
  const [name, setName] = useState('');
  const [of, setOf] = useState('');
  const id = useId();
  const taken = names.includes(name.trim());
  const mayMake = name.trim() !== '' && !taken;
  const make = (): void => {
    document.edit('a part of its own', (project) =>
      cutOut(project, { name, ...(of === '' ? {} : { of }), low: box.low, high: box.high }),
    );
    setName('');
    section.whole();
  };
  return (
    <div className="cut-out">
      <div className="field">
        <label htmlFor={id}>Make what stays a part, called</label>
        <input
          id={id}
          className="text-input"
          value={name}
          onChange={({ target }) => setName(target.value)}
          onKeyDown={({ key }) => key === 'Enter' && mayMake && make()}
        />
      </div>
      {names.length > 1 && (
        <Choice
          label="Cut out of"
          value={of}
          options={[
            { value: '', label: 'all that lies in the box' },
            ...names.map((part) => ({ value: part, label: part })),
          ]}
          onChoose={setOf}
        />
      )}
      <Button disabled={!mayMake} onPress={make}>
        Make it a part
      </Button>
      {taken && <p className="missing">Another part is called so.</p>}
    </div>
  );
}

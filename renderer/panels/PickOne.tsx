import { useState } from 'react';
import { Button } from '../widgets/Button.tsx';
import { Choice } from '../widgets/Choice.tsx';

interface PickOneProps {
  readonly label: string;
  /** what stands in the field before something is picked */
  readonly hint: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** what the button says */
  readonly act: string;
  readonly onAct: (value: string) => void;
}

const NONE = '';

/** One of many picked first and acted on by a button, so that going through the list by keys does nothing yet. */
export function PickOne({ label, hint, options, act, onAct }: PickOneProps) {
  const [picked, setPicked] = useState(NONE);
  const known = options.some(({ value }) => value === picked) ? picked : NONE;
  return (
    <div className="pick-one">
      <Choice label={label} value={known} options={[{ value: NONE, label: hint }, ...options]} onChoose={setPicked} />
      <Button
        disabled={known === NONE}
        onPress={() => {
          onAct(known);
          setPicked(NONE);
        }}
      >
        {act}
      </Button>
    </div>
  );
}

import { useStore } from 'zustand';
import { PLAIN_SKIN, type Skin } from '../../../shared/document/project/schema.ts';
import { formatTemperature } from '../../../shared/sheets/format/index.ts';
import type { PartView } from '../../state/sessionStore.ts';
import { useBench, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { wordsOf } from '../runs/words.ts';
import { SkinFields } from './SkinFields.tsx';
import { SkinSwatch } from './SkinSwatch.tsx';

/** One skin with its values and its parts. */
export function SkinParts({ skin, parts }: { skin: Skin; parts: readonly string[] }) {
  const { hand } = useBench();
  const own = skin.id === PLAIN_SKIN.id ? null : skin.id;
  const filling = useStore(hand, ({ tool }) => tool.kind === 'skin' && tool.skin === own);
  return (
    <section aria-label={`Skin: ${skin.name}`}>
      <div className="skin-head">
        <h3 className="skin-title">
          <SkinSwatch kind={skin.kind} /> {skin.name} <span className="skin-kind">{skinLine(skin)}</span>
        </h3>
        <Button
          pressed={filling}
          name={`Put parts into ${skin.name}`}
          onPress={() => hand.take(filling ? { kind: 'none' } : { kind: 'skin', skin: own })}
        >
          Put parts in
        </Button>
      </div>
      {own !== null && <SkinFields skin={skin} />}
      {parts.length === 0 && own !== null && <p className="teach">No part is in it yet.</p>}
      <ul className="parts">
        {parts.map((part) => (
          <PartRow key={part} part={part} here={skin.id} />
        ))}
      </ul>
    </section>
  );
}

function skinLine({ kind, surfaceTemperatureC }: Skin): string {
  return surfaceTemperatureC === undefined
    ? wordsOf(kind)
    : `${wordsOf(kind)}, ${formatTemperature(surfaceTemperatureC)}`;
}

const VIEWS: readonly { readonly view: PartView; readonly word: string }[] = [
  { view: 'shown', word: 'on' },
  { view: 'ghost', word: 'see-through' },
  { view: 'off', word: 'off' },
];

/** A part with how it is shown; while parts are put into a skin, a button that puts it there. */
function PartRow({ part, here }: { part: string; here: string }) {
  const { session, hand, onBay } = useBench();
  const current = useSession((state) => state.parts[part] ?? 'shown');
  const tool = useStore(hand, (state) => state.tool);
  const aimed = useStore(hand, (state) => state.tool.kind === 'skin' && state.aim?.part === part);
  if (tool.kind === 'skin')
    return (
      <li className={aimed ? 'part-row part-aimed' : 'part-row'}>
        <div className="part-put">
          <span>{part}</span>
          {(tool.skin ?? PLAIN_SKIN.id) === here ? (
            <span className="value-note">in it</span>
          ) : (
            <Button name={`Put ${part} in`} onPress={() => onBay.skin(part, tool.skin)}>
              Put in
            </Button>
          )}
        </div>
      </li>
    );
  return (
    <li className="part-row">
      <fieldset>
        <legend>{part}</legend>
        {VIEWS.map(({ view, word }) => (
          <label key={view} className="part-view">
            <input
              type="radio"
              name={`part-${part}`}
              checked={current === view}
              onChange={() => session.showPart(part, view)}
            />
            <span>{word}</span>
          </label>
        ))}
      </fieldset>
    </li>
  );
}

import { describeProblem } from '../../../shared/base/result.ts';
import { PLAIN_SKIN, type Skin } from '../../../shared/document/project/schema.ts';
import { formatTemperature } from '../../../shared/sheets/format/index.ts';
import type { PartView } from '../../state/sessionStore.ts';
import { useBench, useDocument, useSession } from '../../state/useBench.ts';
import { Length } from '../Length.tsx';
import { wordsOf } from '../runs/words.ts';
import { SkinSwatch } from './SkinSwatch.tsx';

/** The bay's skins and parts; covers can be made see-through or taken off to look underneath. */
export function BayCard() {
  const open = useDocument((state) => state.open);
  if (open === null) return null;
  const { bay } = open.history.present;
  const skins: readonly Skin[] = [...bay.skins, PLAIN_SKIN];
  const parts = open.bay?.parts ?? [];
  return (
    <article className="slip card" aria-labelledby="bay-title">
      <h2 id="bay-title">Bay</h2>
      <p className="service">
        {bay.meshes.map((mesh) => mesh.path).join(', ')} · scan good to{' '}
        <Length mm={bay.scanUncertaintyMm} rounding="up" denominator={32} both />, added to every clearance
      </p>
      {open.warnings.map((warning) => (
        <p className="reason" key={`${warning.path}${warning.message}`}>
          {describeProblem(warning)}
        </p>
      ))}
      {skins.map((skin) => {
        const own = [...new Set(parts.filter((part) => part.skin === skin.id).map((part) => part.name))];
        return own.length === 0 ? null : <SkinParts key={skin.id} skin={skin} parts={own} />;
      })}
      {open.bay === null && <p className="teach">The mesh is being read.</p>}
      <p className="teach">
        Bringing in a mesh, painting skins and measuring the unit by a bar are not built yet: state them in the project
        file.
      </p>
    </article>
  );
}

function SkinParts({ skin, parts }: { skin: Skin; parts: readonly string[] }) {
  return (
    <section>
      <h3 className="skin-title">
        <SkinSwatch kind={skin.kind} /> {skin.name} <span className="skin-kind">{skinLine(skin)}</span>
      </h3>
      <ul className="parts">
        {parts.map((part) => (
          <PartRow key={part} part={part} />
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

function PartRow({ part }: { part: string }) {
  const { session } = useBench();
  const current = useSession((state) => state.parts[part] ?? 'shown');
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

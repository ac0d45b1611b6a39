import { describeProblem } from '../../../shared/base/result.ts';
import { PLAIN_SKIN, type Skin } from '../../../shared/document/project/schema.ts';
import { skinOfPart } from '../../../shared/document/project/skinOfPart.ts';
import { useDocument } from '../../state/useBench.ts';
import { Length } from '../Length.tsx';
import { BayAir } from './BayAir.tsx';
import { Bodies } from './Bodies.tsx';
import { CutOuts } from './CutOuts.tsx';
import { LeftOut } from './LeftOut.tsx';
import { NewSkin } from './NewSkin.tsx';
import { OilLevel } from './OilLevel.tsx';
import { ProjectName } from './ProjectName.tsx';
import { SkinParts } from './SkinParts.tsx';
import { SquareUp } from './SquareUp.tsx';
import { VehicleChoice } from './VehicleChoice.tsx';

/** The bay's skins and parts: which part is what, and which are looked through or taken off. */
export function BayCard() {
  const open = useDocument((state) => state.open);
  if (open === null) return null;
  const project = open.history.present;
  const { bay } = project;
  const skins: readonly Skin[] = [...bay.skins, PLAIN_SKIN];
  const names = [...new Set((open.bay?.parts ?? []).map((part) => part.name))];
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
      <ProjectName project={project} />
      <VehicleChoice />
      {open.bay !== null && <SquareUp />}
      {open.bay !== null && <BayAir />}
      {open.bay !== null && <OilLevel />}
      {open.bay !== null && <NewSkin />}
      {open.bay !== null &&
        skins.map((skin) => (
          <SkinParts
            key={skin.id}
            skin={skin}
            parts={names.filter((name) => skinOfPart(project, name).id === skin.id)}
          />
        ))}
      {open.bay !== null && <CutOuts project={project} />}
      {open.bay !== null && <LeftOut project={project} names={names} />}
      {open.bay !== null && <Bodies project={project} names={names} />}
      {open.bay === null && <p className="teach">The mesh is being read.</p>}
    </article>
  );
}

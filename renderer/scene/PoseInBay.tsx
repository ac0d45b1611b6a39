import type { Lay } from '../../shared/document/lay/schema.ts';
import { useSession } from '../state/useBench.ts';
import { Ghost } from './Ghost.tsx';
import type { ScenePalette } from './palette.ts';

/** The hoses in another shape than at rest: at an extreme of the bodies' motion, or the chosen one under pressure. */
export function PoseInBay({
  lays,
  chosen,
  palette,
}: {
  lays: readonly Lay[];
  chosen: string | null;
  palette: ScenePalette;
}) {
  const pose = useSession((session) => session.pose);
  if (pose === null) return null;
  return lays.map((lay) => {
    const own = lay.run === chosen;
    const extreme = pose.kind === 'rock' ? lay.rock?.extremes[pose.extreme] : undefined;
    const line = pose.kind === 'rock' ? extreme?.line : own ? lay.breathing?.[pose.breath]?.line : undefined;
    if (line === undefined || line.length < 2) return null;
    const name = !own ? '' : pose.kind === 'rock' ? (extreme?.pose.name ?? '') : 'under pressure';
    return (
      <Ghost
        key={lay.run}
        line={line}
        radiusMm={lay.outsideDiameterMm / 2}
        name={name}
        colour={own ? palette.selected : palette.edge}
        palette={palette}
      />
    );
  });
}

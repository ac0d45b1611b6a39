import type { Finding, Severity } from '../../document/lay/schema.ts';
import { galvanicPair } from '../../document/materials/galvanic.ts';
import { FUELS } from '../../document/parts/fluids.ts';
import type { EndMaterial } from '../../document/parts/schema.ts';
import type { ResolvedEnd } from '../../document/project/resolve.ts';
import type { Fluid } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { FLUID_WORDS } from '../../document/wording/serviceWords.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { mouthPlace, SIDES, type Side, sideText } from './places.ts';

interface Bad {
  readonly grade: 0 | 0.5;
  readonly severity: Severity;
  readonly why: string;
}

/** Water as it comes from outside. */
const RAW: readonly Fluid[] = ['raw-water', 'exhaust-water'];

const RAW_WATER: Partial<Record<EndMaterial, Bad>> = {
  aluminium: { grade: 0, severity: 'look', why: 'raw water pits light alloy, salt water soon' },
  steel: { grade: 0.5, severity: 'look', why: 'raw water rusts carbon steel' },
};
/** Metals that a fluid attacks; all others are usual in it. */
const ATTACKED: Partial<Record<Fluid, Partial<Record<EndMaterial, Bad>>>> = {
  'raw-water': RAW_WATER,
  'exhaust-water': RAW_WATER,
  methanol: {
    aluminium: {
      grade: 0.5,
      severity: 'note',
      why: 'methanol attacks bare aluminium; anodised ends are usual, flushed after running',
    },
  },
  e85: {
    aluminium: { grade: 0.5, severity: 'note', why: 'ethanol attacks bare aluminium; anodised ends are usual' },
    brass: { grade: 0.5, severity: 'note', why: 'ethanol fuel dezincifies brass' },
  },
};

/** The metals of the ends in their fluid, and where it is salt or raw water each joint's metals beside each other in the galvanic series. */
export function endMetals(context: CheckContext): Finding[] {
  return SIDES.flatMap((side) => [...attacked(context, side), ...eatenPairs(context, side)]);
}

function attacked({ project, run, lay }: CheckContext, side: Side): Finding[] {
  const { fluid } = run.run.service;
  const { material } = run[side].end;
  const bad = ATTACKED[fluid]?.[material];
  if (bad === undefined) return [];
  const use = ruleValue(project, 'ends-suit-fluid', run.run.id);
  return judge({
    check: 'endMetals',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured: bad.grade,
    unit: 'count',
    severity: bad.severity,
    at: mouthPlace(lay, side),
    message: `${FLUID_WORDS[fluid]} on ${material} at ${sideText(side)}: ${bad.why}.`,
    mend: 'Ends of stainless or bronze there, or what their maker lists for this fluid.',
  });
}

/** What touches at one end of a hose, from the hose outwards. */
function piecesAt({ end, stack, port }: ResolvedEnd): readonly Piece[] {
  const adapters =
    stack === undefined
      ? []
      : [...stack.adapters].reverse().map(({ adapter: { name, material } }) => ({ name, material }));
  const { name, material } = stack?.bare ?? port;
  return [
    { name: end.name, material: end.material },
    ...adapters,
    ...(material === undefined ? [] : [{ name, material }]),
  ];
}

interface Piece {
  readonly name: string;
  readonly material: EndMaterial;
}

/** Pairs that the salt eats. Of fuel on a boat the code is plainer than the series: no brass on aluminium, and stainless between them is what it wants. */
function eatenPairs(context: CheckContext, side: Side): Finding[] {
  const { project, run } = context;
  const { fluid } = run.run.service;
  const boat = project.vehicle === 'boat';
  if (!RAW.includes(fluid) && !boat) return [];
  const pieces = piecesAt(run[side]);
  return pieces.slice(1).flatMap((piece, i) => {
    const on = pieces[i] as Piece;
    const metals = [on.material, piece.material];
    if (!boat || !FUELS.includes(fluid) || !metals.includes('aluminium')) return apart(context, side, on, piece);
    if (metals.includes('brass')) return noBarrier(context, side, on, piece);
    return metals.includes('stainless') ? [] : apart(context, side, on, piece);
  });
}

function noBarrier({ project, run, lay }: CheckContext, side: Side, on: Piece, piece: Piece): Finding[] {
  return judge({
    check: 'endMetals',
    run: run.run.id,
    use: ruleValue(project, 'copper-off-aluminium', run.run.id),
    sense: 'at-most',
    measured: 1,
    unit: 'count',
    severity: 'look',
    at: mouthPlace(lay, side),
    message: `At ${sideText(side)} ${on.name} of ${on.material} is screwed straight to ${piece.name} of ${piece.material}: in salt air the aluminium is eaten at its thread, and fuel comes out.`,
    mend: 'A bushing of 300 series stainless between them.',
  });
}

function apart({ project, run, lay }: CheckContext, side: Side, on: Piece, piece: Piece): Finding[] {
  const raw = RAW.includes(run.run.service.fluid);
  const { apartMv, eaten } = galvanicPair(on.material, piece.material);
  return judge({
    check: 'endMetals',
    run: run.run.id,
    use: ruleValue(project, 'galvanic-apart', run.run.id),
    sense: 'at-most',
    measured: apartMv,
    unit: 'mV',
    severity: raw ? 'look' : 'note',
    at: mouthPlace(lay, side),
    message: `At ${sideText(side)} ${on.material} is screwed to ${piece.material} ${raw ? 'in raw water' : 'on a boat, in salt air'}: ${apartMv} mV apart, and the ${eaten} is eaten.`,
    mend: 'The same metal on both sides, or a piece between that stands between them.',
  });
}

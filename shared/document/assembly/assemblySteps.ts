import type { Lay } from '../lay/schema.ts';
import { sleeveOf } from '../lay/sleeveOf.ts';
import { insertionDepthMm } from '../parts/insertionDepth.ts';
import type { End, Hose } from '../parts/schema.ts';
import { NO_SOURCE } from '../rules/rule.ts';
import { hasNoSwivel, NO_SWIVEL_STEPS } from '../wording/noSwivelWords.ts';
import type { AssembledHose, AssemblyStep, StepLengths } from './assemblyStep.ts';
import { finishedSteps } from './finishedSteps.ts';
import { clampsFirst } from './hoseClampSteps.ts';

/**
 * What the bench does to make up this very hose, in order, from its parts and its lay: what cuts it, what goes on before its second
 * end, how it is clocked, what is measured of it once both ends are on, and what is not touched any more after its proof. Kinds
 * of steps by hose, joint, sleeve and supports; a figure published for a joint or a bore comes with its source, and the makers
 * of hose and ends come first. Deterministic.
 */
export function assemblySteps(hose: AssembledHose, lay: Lay, lengths: StepLengths): readonly AssemblyStep[] {
  return [
    ...noSwivel(hose),
    ...cut(hose.hose),
    ...marked(hose, lengths),
    ...widened(hose),
    ...olives(hose),
    ...clampsFirst(hose),
    { ...first('end-a', 'END A fitted and its push-out mark still at the mouth.'), source: NO_SOURCE },
    ...threadedOn(hose, lay, lengths),
    first('flags', 'Tag and flags A and B on the hose.'),
    first(
      'end-b',
      lay.clock.kind === 'angle'
        ? 'Only now END B; set the clock (see the clock card) before it is finally tight.'
        : 'Only now END B; the clock is free.',
    ),
    ...finishedSteps(hose, lengths),
  ];
}

function first(id: string, words: string, more: Partial<AssemblyStep> = {}): AssemblyStep {
  return { id, stage: 'before-second-end', words, source: NO_SOURCE, ...more };
}

function noSwivel({ a, b }: AssembledHose): AssemblyStep[] {
  if (!hasNoSwivel(a.end, b.end)) return [];
  return NO_SWIVEL_STEPS.map((step, i) => first(`no-swivel-${i + 1}`, `No swivel, ${i + 1}: ${step}`));
}

const isPtfe = ({ core }: Pick<Hose, 'core'>): boolean => core === 'ptfe-smooth' || core === 'ptfe-convoluted';
const TEXTILE = ['polyester-braid', 'aramid-braid', 'textile-braid'] as const;
const isTextile = ({ cover }: Pick<Hose, 'cover'>): boolean => TEXTILE.some((textile) => textile === cover);

const CUTS =
  'builders praise a cut-off wheel, one advises against its dust in rubber (trade letters); all clean after it';

function cut(hose: Hose): AssemblyStep[] {
  const tape = isTextile(hose)
    ? 'Hose wrapped tight round the cut line with tape that does not stick: glue stays in the braid.'
    : hose.cover === 'rubber'
      ? 'Cut line drawn square round the hose.'
      : 'Hose taped tight round the cut line.';
  const saw = isPtfe(hose)
    ? 'Cut square through the tape with a fine saw or a thin wheel, never chopped: jaws flatten the liner.'
    : 'Cut square with a fine saw, a thin wheel or sharp shears made for it.';
  const braided = hose.cover === 'steel-braid';
  return [
    first('tape', tape),
    first('cut', saw, {
      source: `${NO_SOURCE}; ${CUTS}`,
      ...(braided ? { caution: 'The wires of a cut braid prick and fly: gloves and glasses.' } : {}),
    }),
    first('clean-cut', `Bore blown clean; no flap of liner${braided ? ', no loose wire' : ''}.`),
  ];
}

function marked({ a, b }: AssembledHose, { both }: StepLengths): AssemblyStep[] {
  const depths = `${both(insertionDepthMm(a.end))} at END A, ${both(insertionDepthMm(b.end))} at END B`;
  return [
    first('insertion', `Insertion depth marked from the cut: ${depths}.`, {
      why: 'A hose that is not fully in blows off; the mark shows it and shows push-out later.',
    }),
  ];
}

const SIDES = ['a', 'b'] as const;
/** Above -8 with an olive the hose is usually widened first: common practice, no source. */
const WIDENED_ABOVE_DASH = 8;

function isWidened({ expander, innerOlive, dash }: End): boolean {
  return expander ?? (innerOlive === true && dash > WIDENED_ABOVE_DASH);
}

/** END A, END B or both, in words; undefined = none of them. */
export function endsWhere(hose: Pick<AssembledHose, 'a' | 'b'>, holds: (end: End) => boolean): string | undefined {
  const names = SIDES.filter((side) => holds(hose[side].end)).map((side) => `END ${side.toUpperCase()}`);
  return names.length === 0 ? undefined : names.join(' and ');
}

function widened(hose: AssembledHose): AssemblyStep[] {
  const ends = endsWhere(hose, isWidened);
  if (ends === undefined) return [];
  return [first('expander', `Hose widened with the expander for ${ends} before the end goes in.`)];
}

function olives(hose: AssembledHose): AssemblyStep[] {
  const ends = endsWhere(hose, ({ innerOlive }) => innerOlive === true);
  if (ends === undefined) return [];
  return [
    first(
      'olive',
      `${ends}: socket on the hose first, braid opened, olive pushed home over the liner and under every wire, liner against its shoulder.`,
      { why: 'One wire between olive and liner is a leak.' },
    ),
  ];
}

function threadedOn(hose: AssembledHose, lay: Lay, lengths: StepLengths): AssemblyStep[] {
  return [
    ...sleeved(hose, lay, lengths),
    ...lay.supports.flatMap(({ id, kind }): AssemblyStep[] => {
      const part = hose.clamps?.find(({ support }) => support === id)?.clamp.name;
      const called = part === undefined ? id : `${id} (${part})`;
      if (kind === 'clamp') return [first(`on-${id}`, `Clamp ${called} slid on, if it does not open.`)];
      return [first(`on-${id}`, `Grommet or ferrule of pass-through ${id} slid on.`)];
    }),
  ];
}

function sleeved(hose: AssembledHose, lay: Lay, { both, cut: cutText }: StepLengths): AssemblyStep[] {
  const { sleeve } = hose;
  const length = sleeveOf(hose, lay);
  if (sleeve === undefined || length === undefined) return [];
  const tight = endsWhere(hose, ({ collarDiameterMm }) => collarDiameterMm > sleeve.insideDiameterMm);
  return [
    first(
      'sleeve',
      `Sleeve ${sleeve.name}, cut at least ${cutText(length.cutLengthMm)} (estimate with ${length.turnedDeg.toFixed(0)}° of bends): slid on, to reach ${both(length.reachMm)} past each socket with the nuts free; both its ends to be sealed.`,
      {
        why: 'It does not go over a finished end.',
        source: "a kit builder's and an aerospace shop's notes: sleeve before the second end",
        ...(tight === undefined
          ? {}
          : { caution: `It is narrower than the socket of ${tight}: try that it stretches over it before cutting.` }),
      },
    ),
  ];
}

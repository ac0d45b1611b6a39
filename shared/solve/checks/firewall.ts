import type { Finding } from '../../document/lay/schema.ts';
import type { EndMaterial } from '../../document/parts/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { carriesFlammable } from '../../document/rules/requiredClearance.ts';
import type { CheckContext } from './check.ts';
import { type Comparison, judge } from './judge.ts';
import { endPlace, placeText, SIDES, type Side, sideText } from './places.ts';

/**
 * What closes a firewall where a line goes through it that carries what burns: fittings of aluminium melt, grommets of rubber burn, and then the
 * fire has the fluid and the cabin. Ends of aluminium on such a line are a note. Only where the project states the firewall.
 */
export function firewall(context: CheckContext): Finding[] {
  if (!carriesFlammable(context.project, context.run.run.id)) return [];
  return [...SIDES.flatMap((side) => atPort(context, side)), ...throughIt(context)];
}

function melts(context: CheckContext, words: Pick<Comparison, 'severity' | 'message' | 'mend' | 'at'>): Finding[] {
  const { project, run } = context;
  return judge({
    ...words,
    check: 'firewall',
    run: run.run.id,
    use: ruleValue(project, 'firewall-fitting', run.run.id),
    sense: 'at-most',
    measured: 1,
    unit: 'count',
  });
}

const STEEL = 'One of steel or stainless, sealed with what stands fire.';
const LIGHT: EndMaterial = 'aluminium';

function atPort(context: CheckContext, side: Side): Finding[] {
  const { run, lay } = context;
  const { port, stack, end } = run[side];
  const { inFirewall = false, name, material } = stack?.bare ?? port;
  if (!inFirewall) return [];
  const at = endPlace(lay, side, lay.ends[side].seatPoint);
  const fittings = [
    ...(material === LIGHT ? [`The fitting ${name}`] : []),
    ...(stack?.adapters ?? [])
      .filter(({ adapter }) => adapter.material === LIGHT)
      .map(({ adapter }) => `The fitting ${adapter.name}`),
  ];
  return [
    ...fittings.flatMap((fitting) =>
      melts(context, {
        severity: 'look',
        at,
        message: `${fitting} is of aluminium and stands in the firewall at ${sideText(side)}: in a fire it melts in seconds, and the line is open on both sides.`,
        mend: STEEL,
      }),
    ),
    ...(end.material === LIGHT
      ? melts(context, {
          severity: 'note',
          at,
          message: `${sideText(side)} at the firewall is of aluminium; ends of steel are asked for from there to the engine, since they flex and may meet fire.`,
          mend: 'The same end in steel.',
        })
      : []),
  ];
}

function throughIt(context: CheckContext): Finding[] {
  const { run, lay } = context;
  return run.run.supports.flatMap(({ id, kind, name = 'The pass-through', seal, inFirewall = false }) => {
    const at = lay.supports.find((support) => support.id === id)?.at;
    if (kind !== 'pass-through' || !inFirewall || seal !== 'grommet' || at === undefined) return [];
    return melts(context, {
      severity: 'look',
      at,
      message: `${name}, ${placeText(at)}, closes the firewall with a grommet: rubber burns, and then the hole is open.`,
      mend: `A bulkhead fitting with a hose on each side. ${STEEL}`,
    });
  });
}

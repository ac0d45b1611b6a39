import type { Finding } from '../../document/lay/schema.ts';
import { type RuleUse, ruleValue } from '../../document/rules/index.ts';
import { flowText, lengthText, pressureText } from '../../document/wording/quantityText.ts';
import { flowOf } from '../flow/flowOf.ts';
import { fluidState } from '../flow/fluidState.ts';
import { DISCHARGE, restrictorLossKpa } from '../flow/restrictor.ts';
import type { CheckContext } from './check.ts';
import { type Comparison, judge } from './judge.ts';
import { notStated } from './notStated.ts';

/**
 * The oil feed of a turbo by the kind of its bearings: restrictor, pressure after it, size. A pressure that was measured is
 * judged; else it is estimated after the hose and, by the wanted flow, after the restrictor, as a note that asks for a gauge.
 */
export function turboFeed(context: CheckContext): Finding[] {
  const { purpose, bearing } = context.run.run.service;
  if (purpose !== 'turbo-oil-feed') return [];
  if (bearing === undefined) return unknown(context);
  return bearing === 'ball' ? ball(context) : journal(context);
}

type Told = Pick<Comparison, 'sense' | 'measured' | 'unit' | 'severity' | 'message' | 'mend'>;

function against({ run }: CheckContext, use: RuleUse, told: Told): Finding[] {
  return judge({
    check: 'turboFeed',
    run: run.run.id,
    use,
    ...told,
  });
}

function unknown(context: CheckContext): Finding[] {
  const of = (id: string): RuleUse => ruleValue(context.project, id, context.run.run.id);
  const { restrictor, target, conflict } = statements(of);
  return notStated(context, 'turbo-bearing-known', {
    check: 'turboFeed',
    message: `Ball or journal bearings? Ball: ${target} at the turbo at maximum rpm, ${restrictor}, verified after it. Journal: ${conflict}.`,
    mend: "State the turbo's bearings.",
  });
}

/** What the sources say, with the limits that hold for this project. */
function statements(of: (id: string) => RuleUse): Readonly<Record<'restrictor' | 'target' | 'conflict', string>> {
  const [low, high] = [of('turbo-ball-restrictor-least'), of('turbo-ball-restrictor-most')];
  const [least, most] = [of('turbo-ball-pressure-least'), of('turbo-ball-pressure-most')];
  return {
    restrictor: `a restrictor of about ${lengthText(low.value)}, to ${lengthText(high.value)} by another shop`,
    target: `${pressureText(least.value)} to ${pressureText(most.value)}`,
    conflict: 'normally no restrictor by one shop, two others fit one anyway',
  };
}

function ball(context: CheckContext): Finding[] {
  return [...ballSize(context), ...ballRestrictor(context), ...ballPressure(context)];
}

function ballSize(context: CheckContext): Finding[] {
  const { project, run } = context;
  const use = ruleValue(project, 'turbo-ball-feed-dash', run.run.id);
  return against(context, use, {
    sense: 'at-least',
    measured: run.hose.dash,
    unit: 'dash',
    severity: 'look',
    message: `A -${run.hose.dash} feed to a ball-bearing turbo; -3 or -4 is usual.`,
    mend: 'A larger hose, and the restrictor at the turbo.',
  });
}

function ballRestrictor(context: CheckContext): Finding[] {
  const { project, run } = context;
  const { restrictorMm } = run.run.service;
  if (restrictorMm === undefined || restrictorMm === 0) return [];
  const told = {
    measured: restrictorMm,
    unit: 'mm',
    severity: 'look',
    message: `A restrictor of ${lengthText(restrictorMm)}; for ball bearings about 1.0 mm (0.040 in) is given, 1.0 to 1.5 mm by another shop.`,
    mend: 'The restrictor that the maker of the turbo gives, and a gauge after it.',
  } as const;
  return [
    ...against(context, ruleValue(project, 'turbo-ball-restrictor-least', run.run.id), { ...told, sense: 'at-least' }),
    ...against(context, ruleValue(project, 'turbo-ball-restrictor-most', run.run.id), { ...told, sense: 'at-most' }),
  ];
}

function ballPressure(context: CheckContext): Finding[] {
  const { project, run } = context;
  const { turboPressureKpa, restrictorMm } = run.run.service;
  const of = (id: string): RuleUse => ruleValue(project, id, run.run.id);
  const { target, restrictor } = statements(of);
  const least = of('turbo-ball-pressure-least');
  const most = of('turbo-ball-pressure-most');
  const mend = 'Another restrictor, or another place to take the oil from; then the gauge again.';
  if (turboPressureKpa !== undefined) {
    const message = `Measured after the restrictor: ${pressureText(turboPressureKpa)}; ${target} is asked for at maximum rpm.`;
    const told = { measured: turboPressureKpa, unit: 'kPa', severity: 'look', message, mend } as const;
    return [
      ...against(context, least, { ...told, sense: 'at-least' }),
      ...against(context, most, { ...told, sense: 'at-most' }),
    ];
  }
  const arrives = afterHose(context);
  if (restrictorMm === 0)
    return against(context, most, {
      sense: 'at-most',
      measured: arrives.low,
      unit: 'kPa',
      severity: 'look',
      message: `No restrictor, and ${bandText(arrives)} ${arrives.how}; ball bearings ask for ${target} at maximum rpm, with ${restrictor}.`,
      mend: 'A restrictor at the turbo, and a gauge after it.',
    });
  const after = restrictorMm === undefined ? undefined : afterRestrictor(context, arrives, restrictorMm);
  return notStated(context, 'turbo-ball-pressure-known', {
    check: 'turboFeed',
    message: `Verify ${target} at the turbo at maximum rpm, after the restrictor${restrictorMm === undefined ? `: ${restrictor}` : ''}. Before it there is ${bandText(arrives)} ${arrives.how}.${after ?? ''}`,
    mend:
      restrictorMm === undefined
        ? "State the restrictor's bore, and the pressure measured after it."
        : 'State the pressure measured after the restrictor, oil hot.',
  });
}

interface Arriving {
  readonly low: number;
  readonly high: number;
  readonly how: string;
}

/** The working pressure less what the hose loses, plus what its fall gives, kPa. */
function afterHose({ run, lay }: CheckContext): Arriving {
  const { pressureKpa } = run.run.service;
  const flow = flowOf(run, lay);
  if (flow === undefined)
    return {
      low: pressureKpa,
      high: pressureKpa,
      how: 'at the start of the hose (no flow stated: its loss not counted)',
    };
  const stands = pressureKpa + flow.headKpa;
  return { low: stands - flow.dropKpa.high, high: stands - flow.dropKpa.low, how: 'after the hose, by estimate' };
}

function afterRestrictor({ run }: CheckContext, arrives: Arriving, boreMm: number): string | undefined {
  const { flowLPerMin } = run.run.service;
  const fluid = fluidState(run.run.service);
  if (!flowLPerMin || fluid === undefined) return undefined;
  const loss = restrictorLossKpa(flowLPerMin, boreMm, fluid.densityKgPerM3);
  const method = `a sharp-edged hole with a coefficient of ${DISCHARGE.low} to ${DISCHARGE.high}`;
  if (arrives.high - loss.low <= 0)
    return ` By estimate (${method}) a hole of ${lengthText(boreMm)} does not let ${flowText(flowLPerMin)} through at that pressure.`;
  const band = { low: Math.max(0, arrives.low - loss.high), high: arrives.high - loss.low };
  return ` If ${flowText(flowLPerMin)} flow, ${bandText(band)} is left after it by estimate (${method}).`;
}

function bandText({ low, high }: { low: number; high: number }): string {
  return pressureText(low) === pressureText(high) ? pressureText(low) : `${pressureText(low)} to ${pressureText(high)}`;
}

function journal(context: CheckContext): Finding[] {
  return [...journalSize(context), ...journalRestrictor(context)];
}

function journalSize(context: CheckContext): Finding[] {
  const { project, run } = context;
  const { dash, insideDiameterMm } = run.hose;
  if (dash >= 4) return [];
  return against(context, ruleValue(project, 'turbo-journal-feed-bore', run.run.id), {
    sense: 'at-least',
    measured: insideDiameterMm,
    unit: 'mm',
    severity: 'look',
    message: `A -${dash} feed with a bore of ${lengthText(insideDiameterMm)} to journal bearings; -4 or a bore of 0.25 in is given.`,
    mend: 'A -4 hose.',
  });
}

/** Stated that none is fitted, nothing is left to say. */
function journalRestrictor(context: CheckContext): Finding[] {
  const { project, run } = context;
  const { restrictorMm } = run.run.service;
  const of = (id: string): RuleUse => ruleValue(project, id, run.run.id);
  const { conflict } = statements(of);
  if (restrictorMm === undefined)
    return notStated(context, 'turbo-restrictor-known', {
      check: 'turboFeed',
      message: `Journal bearings: ${conflict}. Which it is here is not stated.`,
      mend: "Go by the turbo's maker, and state the restrictor: 0 for none.",
    });
  return against(context, of('turbo-journal-restrictor'), {
    sense: 'at-most',
    measured: restrictorMm,
    unit: 'mm',
    severity: 'note',
    message: `A restrictor of ${lengthText(restrictorMm)} on journal bearings: ${conflict}.`,
    mend: "Go by the turbo's maker; too little oil costs the bearings.",
  });
}

import { GALVANIC_SOURCE } from '../materials/galvanic.ts';
import { NO_SOURCE, type Rule } from './rule.ts';

/** Fluid, core, ends, and metals that touch. */
export const MATERIAL_RULES: readonly Rule[] = [
  {
    id: 'core-suits-fluid',
    title: 'How a core bears its fluid (1 = usual, 0.5 = on conditions, 0 = not)',
    value: 1,
    unit: 'count',
    source: "the trade's tables of liner by fluid, cell by cell; the hose maker's own list comes first",
    grade: 'published',
    overridable: true,
  },
  {
    id: 'ends-suit-fluid',
    title: 'How the metal of an end bears its fluid (1 = usual, 0.5 = on conditions, 0 = not)',
    value: 1,
    unit: 'count',
    source: `${NO_SOURCE} for raw water on light alloy and carbon steel; alcohol fuels on bare aluminium and brass: DOE/GO-102010-3073 (from memory)`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'galvanic-apart',
    title: 'Metals of a wet joint apart in the galvanic series, at most',
    value: 200,
    unit: 'mV',
    source: GALVANIC_SOURCE,
    grade: 'published',
    dissent:
      'a barrier of stainless between copper alloys and aluminium is usual on boats (boats.com; ABYC as quoted at plasticclassicforum.com)',
    overridable: true,
  },
  {
    id: 'push-on-pressure',
    title: 'Working pressure on a push-on joint',
    value: 1724,
    unit: 'kPa',
    range: { low: 1724, high: 2413 },
    source: 'powermotiontech.com, "Back to the basics: push-lock fittings": 250 to 350 psi',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'push-on-temperature',
    title: 'Temperature of a push-on joint',
    value: 149,
    unit: 'deg C',
    source: 'powermotiontech.com, "Back to the basics: push-lock fittings": 300 F; no PTFE hose',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'push-on-lifeline',
    title: 'Push-on joints where a lost hose burns the car or the engine',
    value: 0,
    unit: 'count',
    source:
      'improvedtouring.com 24247: a push-on -10 came off its barb after three years, with no warning at two inspections; banned on fuel by drag racing rules (ANDRA rule book)',
    grade: 'published',
    dissent: 'its makers list it for oil and fuel at low pressure: go by the maker of the joint in hand',
    overridable: true,
  },
  {
    id: 'push-on-ptfe',
    title: 'Push-on joints on PTFE hose',
    value: 0,
    unit: 'count',
    source: 'powermotiontech.com, "Back to the basics: push-lock fittings": no PTFE hose',
    grade: 'published',
    overridable: false,
  },
  {
    id: 'marine-fuel-marking',
    title: 'Petrol hose on a boat is marked A1 (1 = yes)',
    value: 1,
    unit: 'count',
    source:
      '33 CFR 183.558(a) and (b): A1 between pump and carburettor, A1 or on a condition B1 from tank to engine; 33 CFR 183.540: printed every 12 in; boats.com: A1-15, at most 15 g/m2 in 24 h and a fire test of 2.5 min',
    grade: 'published',
    dissent: 'where and for which hoses it is the law differs: ask the local code',
    overridable: true,
  },
  {
    id: 'hose-life',
    title: 'Hoses past their usual life (1 = past it)',
    value: 0,
    unit: 'count',
    source:
      'kitplanes.com, "Maintenance matters" 39; phenixindustries.com; soundingsonline.com: by core, fluid and vehicle',
    grade: 'published',
    dissent: 'what the hose maker says comes first',
    overridable: true,
  },
  {
    id: 'vacuum-known',
    title: 'Suction hoses of which it is known how much vacuum they bear (1 = yes)',
    value: 1,
    unit: 'count',
    source:
      'soft hose starves a pump: boattest.com, "A hose is not just a hose"; vacuum on a dry sump is high when hot: performanceracing.com, "Plumbing nightmares"; large sizes (-24, -32) may need an inner coil: Aerospace bulletin AA213',
    grade: 'published',
    overridable: true,
  },
];

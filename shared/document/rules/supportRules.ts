import { NO_SOURCE, type Rule } from './rule.ts';

/** Clamps. */
export const SUPPORT_RULES: readonly Rule[] = [
  {
    id: 'clamp-spacing',
    title: 'Longest stretch of hose without a clamp',
    value: 610,
    unit: 'mm',
    source: 'NAVEDTRA 14105 p. 5-11/5-12 and US Army AL0907 p. 59: 24 in or less, closer is better',
    grade: 'published',
    dissent:
      'a speedway rule book (New Zealand, 2010, p. 181): fuel lines every 300 mm; none needed on short hoses (NAVEDTRA 14105)',
    overridable: true,
  },
  {
    id: 'clamp-on-bend',
    title: 'How far a hose turns inside a clamp, at most',
    value: 10,
    unit: 'deg',
    source: `${NO_SOURCE} for the figure; not to be clamped at a bend: Fluid Power (Goodheart-Willcox 2020) p. 200`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'clamp-fits',
    title: 'Clamps that hold another size of hose',
    value: 0,
    unit: 'count',
    source: "the clamp's own sizes and their source",
    grade: 'published',
    overridable: false,
  },
  {
    id: 'clamp-heat',
    title: "Estimated temperature of what a clamp holds under the clamp's own limit by at least",
    value: 0,
    unit: 'deg C',
    source: "the clamp's own limit and its source",
    grade: 'published',
    dissent: 'an estimate: a temperature measured at the clamp outweighs it',
    overridable: true,
  },
  {
    id: 'engine-slack',
    title: 'Hose to spare between what moves on its mounts and the next support',
    value: 38.1,
    unit: 'mm',
    source:
      'US Army AL0907 p. 59 and NAVEDTRA 14018 p. 5-26: at least 1-1/2 in slack between the support and the engine',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'engine-first-support',
    title: 'From an end on what moves on its mounts to the first support of its hose, about',
    value: 76.2,
    unit: 'mm',
    source: 'US Army AL0907 p. 59: a support about 3 in from the connection to an engine',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'pass-through-sealed',
    title: 'Pass-throughs whose seal is stated (1 = yes)',
    value: 1,
    unit: 'count',
    source:
      'grommet or cushioned clamp at bulkhead holes: NAVEDTRA 14018 p. 5-27, US Army AL0907 p. 59; close-fitting ferrule or stuffing box: 46 CFR 119.455',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'firewall-fitting',
    title: 'What a fire melts or burns in a firewall, of a line that carries what burns',
    value: 0,
    unit: 'count',
    source:
      "a kit builder's log (europa.com, RV-7A fuselage, April 2010): a bulkhead fitting of aluminium melts in seconds, one of steel put in its place; an old kit manual asks for steel ends from the firewall to the engine (lancaironline.net, message 37277)",
    grade: 'published',
    dissent: 'another kit builder holds it for needless (rvnewsletter.blogspot.com, "Fun with fuel lines")',
    overridable: true,
  },
  {
    id: 'one-plane',
    title: 'How far a stretch that is to lie in one plane may lie off it',
    value: 5,
    unit: 'mm',
    source: `${NO_SOURCE} for the figure; bend in the plane of movement, clamp where the plane changes: US Army TM 1-1500-204-23-2 p. 4-66; bend in one plane between clamps: ContiTech catalogue p. 330`,
    grade: 'common-practice',
    overridable: true,
  },
];

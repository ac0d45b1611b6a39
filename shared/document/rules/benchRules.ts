import { NO_SOURCE, type Rule } from './rule.ts';

/** What the bench measured of a finished hose, its proof test, and when it is looked over again. */
export const BENCH_RULES: readonly Rule[] = [
  {
    id: 'crimp-diameter',
    title: "How far a reading of a finished crimp lies past the end maker's limits",
    value: 0,
    unit: 'mm',
    source: "the end's own table; where it is measured: manuals of crimping machines, SC32 p. 10 and GC16XD p. 8",
    grade: 'published',
    overridable: false,
  },
  {
    id: 'crimp-limits-known',
    title: 'Whether the finished diameter of a crimp that was measured is known (1 = yes)',
    value: 1,
    unit: 'count',
    source: "the end maker's card",
    grade: 'published',
    overridable: true,
  },
  {
    id: 'proof-passed',
    title: 'Hoses that leaked or whose end moved in their proof test',
    value: 0,
    unit: 'count',
    source: 'NAHAD, hose assembly recommendations',
    grade: 'published',
    overridable: false,
  },
  {
    id: 'proof-multiple',
    title: 'Proof pressure over the working pressure of the weakest part, at least',
    value: 1.5,
    unit: 'ratio',
    range: { low: 1.5, high: 2 },
    source:
      'NAHAD, hose assembly recommendations: 1.5 times for fluoropolymer and industrial hose, twice for hydraulic',
    grade: 'published',
    dissent:
      "an aircraft hose shop tests every hose to twice its rating (kitplanes.com), a kit builder to 1.5 times (rv9a.card-net.org); the maker's own test pressure comes first",
    overridable: true,
  },
  {
    id: 'proof-clock',
    title: 'How far the ends of a hose are turned after its proof test',
    value: 0,
    unit: 'deg',
    source:
      'MIL-DTL-8790F 3.5.3: no loosening or changing of an end fitting position on the hose; US Army TM 1-1500-204-23-2, testing: no adjustment of gap or clock after the test',
    grade: 'published',
    overridable: false,
  },
  {
    id: 'proof-age',
    title: 'Age of the proof test when a hose is fitted, at most',
    value: 12,
    unit: 'months',
    source:
      'US Army TM 1-1500-204-23-2 (aviationmiscmanuals.tpub.com, page 86): tested again where the test is over a year old at installation',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'inspection-months',
    title: 'Longest time between two looks at a hose that is in use',
    value: 12,
    unit: 'months',
    source: 'machine hydraulics, DIN 20066 and BGR 237 as quoted (Nussbaum catalogue p. 100): every year',
    grade: 'published',
    dissent:
      'boats: twice a year at least (boattest.com); after the first hours in use, and before each event, common practice, no source',
    overridable: true,
  },
  {
    id: 'inspection-open',
    title: 'What was found on a hose in use and is not put right',
    value: 0,
    unit: 'count',
    source: NO_SOURCE,
    grade: 'common-practice',
    overridable: true,
  },
];

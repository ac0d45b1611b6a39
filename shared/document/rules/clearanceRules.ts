import { NO_SOURCE, type Rule } from './rule.ts';

/** Clearances from the surface of hose or sleeve, by what it would touch. The scan's uncertainty comes on top. */
export const CLEARANCE_RULES: readonly Rule[] = [
  {
    id: 'clearance-plain',
    title: 'Clearance to a plain part',
    value: 12,
    unit: 'mm',
    source:
      'light-aircraft technical manual JTM001-1 section 13.3.4 (engine hoses): 0.47 in to other hoses and objects',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'clearance-sharp-edge',
    title: 'Clearance to a sharp edge',
    value: 25,
    unit: 'mm',
    source: `${NO_SOURCE}; about twice the clearance to a plain part`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'clearance-composite',
    title: 'Clearance to a composite part',
    value: 25,
    unit: 'mm',
    source: `${NO_SOURCE}; no wear rate of braid on composite is published`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'clearance-moving',
    title: 'Clearance to a part that moves (belt, pulley, linkage, shaft)',
    value: 25,
    unit: 'mm',
    source: NO_SOURCE,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'clearance-wiring',
    title: 'Clearance to wiring of a hose with oil or fuel, at least',
    value: 50.8,
    unit: 'mm',
    source:
      'FAA AC 43.13-1B 11-96w and 11-126: 6 in where it can be, 2 in at least, both clamped and rigidly supported',
    grade: 'published',
    dissent:
      'under 2 in with clamps that part them by 0.5 in for good (MIL-W-5088L as quoted at mechanicsupport.blogspot.com); never tied to the hose, all agree',
    overridable: true,
  },
  {
    id: 'wiring-preferred',
    title: 'Clearance to wiring of a hose with oil or fuel, where it can be',
    value: 152.4,
    unit: 'mm',
    source:
      'FAA AC 43.13-1B 11-96w and 11-126: wire bundles 6 in from flammable-fluid lines, above them and not parallel',
    grade: 'published',
    dissent:
      'below, at an angle, where it cannot be above (a military wiring specification, as quoted at mechanicsupport.blogspot.com)',
    overridable: true,
  },
  {
    id: 'clearance-hot',
    title: 'Clearance to a hot part',
    value: 76.2,
    unit: 'mm',
    source:
      'Street Rodder plumbing tips: 3 in from any significant heat source; New Jersey Administrative Code 13:62-4.16',
    grade: 'published',
    dissent:
      "6 in unless sleeved, and 4 in cooked an oil hose in 3.5 to 4 years (Stinson owners' engine hose notes); a car burned at 3 in (fordmuscle.com, November 2004); closer: 2 in sleeved (FAA AD 95-26-13, as paraphrased), 1.25 in (T. Bingelis, Firewall Forward p. 155, as quoted)",
    overridable: true,
  },
  {
    id: 'heat-sleeve-within',
    title: 'Distance to a hot part under which a hose is sleeved or shielded',
    value: 152.4,
    unit: 'mm',
    source: "Stinson owners' engine hose notes: sleeve everything within 6 in of the exhaust",
    grade: 'published',
    dissent:
      '3 in is enough (Street Rodder plumbing tips); never touching, and sleeved even if clear (askbob.aero, 10 rules)',
    overridable: true,
  },
  {
    id: 'hose-spacing',
    title: 'Clearance between two hoses that are not clamped together',
    value: 12,
    unit: 'mm',
    source:
      'light-aircraft technical manual JTM001-1 section 13.3.4 (engine hoses): 0.47 in to other hoses, or tie-clamped together',
    grade: 'published',
    overridable: true,
  },
  {
    id: 'chafe-reach',
    title: 'Distance within which bare steel braid can rub composite, aluminium or wiring',
    value: 25,
    unit: 'mm',
    source: `${NO_SOURCE}; as far as an engine on rubber mounts may carry the hose. That steel braid cuts: askbob.aero, 10 rules`,
    grade: 'common-practice',
    overridable: true,
  },
  {
    id: 'chafe-rock',
    title: 'Distance within which bare steel braid rubs, bodies at an extreme of their motion',
    value: 3,
    unit: 'mm',
    source: `${NO_SOURCE}; what shakes on top of the stated motion. That steel braid cuts: askbob.aero, 10 rules`,
    grade: 'common-practice',
    overridable: true,
  },
];

import type { PartKind } from '../parts/columns.ts';
import type { Adapter, End, Hose } from '../parts/schema.ts';

/** What a hose's bore is made of. */
export const CORE_WORDS: Readonly<Record<Hose['core'], string>> = {
  'ptfe-smooth': 'PTFE, smooth bore',
  'ptfe-convoluted': 'PTFE, convoluted bore',
  nbr: 'Nitrile rubber (NBR)',
  cpe: 'Chlorinated polyethylene (CPE)',
  epdm: 'EPDM rubber',
  silicone: 'Silicone rubber',
  'synthetic-rubber': 'Synthetic rubber',
};

/** What a hose's outside is. */
export const COVER_WORDS: Readonly<Record<Hose['cover'], string>> = {
  'steel-braid': 'Bare steel braid',
  'polyester-braid': 'Polyester braid',
  'aramid-braid': 'Aramid braid',
  'textile-braid': 'Textile braid',
  rubber: 'Rubber cover',
};

/** How an end is joined to its hose. */
export const JOINT_WORDS: Readonly<Record<End['joint'], string>> = {
  crimp: 'Crimped',
  'screw-together': 'Screwed together',
  'push-on': 'Pushed on',
  clamped: 'Hose clamps over a barb',
};

/** What an end is made of. */
export const END_MATERIAL_WORDS: Readonly<Record<End['material'], string>> = {
  aluminium: 'Aluminium',
  steel: 'Steel',
  stainless: 'Stainless steel',
  brass: 'Brass',
};

/** Whose figures a row of a part table carries. */
export const PROVENANCE_WORDS: Readonly<Record<Hose['provenance'], string>> = {
  published: 'Published figures',
  own: 'Own figures',
  example: 'EXAMPLE DATA, invented',
};

/** What a kind of part is called, one and several. */
export const PART_KIND_WORDS: Readonly<Record<PartKind, { readonly one: string; readonly many: string }>> = {
  hoses: { one: 'hose', many: 'hoses' },
  ends: { one: 'end', many: 'ends' },
  sleeves: { one: 'sleeve', many: 'sleeves' },
  adapters: { one: 'adapter', many: 'adapters' },
  clamps: { one: 'clamp', many: 'clamps' },
  rolls: { one: 'roll', many: 'rolls' },
};

/** How an end joins its port. */
export const END_FORM_WORDS: Readonly<Record<NonNullable<End['form']>, string>> = {
  nut: 'Nut',
  male: 'Male thread',
  banjo: 'Banjo eye',
  flange: 'Flange',
  barb: 'Barb',
};

/** What an adapter is. */
export const ADAPTER_FORM_WORDS: Readonly<Record<Adapter['form'], string>> = {
  straight: 'Straight',
  elbow: 'Elbow',
  banjo: 'Banjo',
  bulkhead: 'Bulkhead',
  tee: 'Tee',
};

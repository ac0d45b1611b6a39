import type { End, Hose } from '../parts/schema.ts';

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

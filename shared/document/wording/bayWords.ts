import type { SkinKind, SkinMaterial, Support } from '../project/schema.ts';

/** What a patch of the bay is. */
export const SKIN_WORDS: Readonly<Record<SkinKind, string>> = {
  plain: 'Plain',
  hot: 'Hot',
  composite: 'Composite',
  'sharp-edge': 'Sharp edge',
  moving: 'Moving',
  wiring: 'Wiring',
};

/** What the parts of a skin are made of, where braid may rub them. */
export const MATERIAL_WORDS: Readonly<Record<SkinMaterial, string>> = {
  steel: 'Steel',
  aluminium: 'Aluminium',
  composite: 'Composite',
  plastic: 'Plastic',
  rubber: 'Rubber',
};

/** What closes the hole of a pass-through. */
export const SEAL_WORDS: Readonly<Record<NonNullable<Support['seal']>, string>> = {
  grommet: 'A grommet',
  'bulkhead-fitting': 'A bulkhead fitting',
  'stuffing-box': 'A stuffing box',
  none: 'Nothing, an open hole',
};

/** What holds or guides a hose on its way. */
export const SUPPORT_WORDS: Readonly<Record<Support['kind'], string>> = {
  clamp: 'Clamp',
  'pass-through': 'Pass-through',
  waypoint: 'Waypoint',
};

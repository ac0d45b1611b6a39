/** Torque of a worm-drive hose clamp by the width of its band, in-lb: what is aimed at, and by how much it may miss. */
export interface ClampTorque {
  readonly bandMm: number;
  readonly newHose: readonly [inchPounds: number, plusMinus: number];
  /** tightened again later, on hose that has set */
  readonly again: readonly [inchPounds: number, plusMinus: number];
}

/** Worm-drive clamps on barbed ends. A clamp maker's guide says 35 in-lb for a band of 1/2 in, and 1/4 in of hose beyond it. */
export const CLAMP_TORQUES: readonly ClampTorque[] = [
  { bandMm: 7.9, newHose: [8, 2], again: [6, 2] },
  { bandMm: 13.5, newHose: [40, 4], again: [27, 4] },
  { bandMm: 15.9, newHose: [65, 4], again: [40, 4] },
];

export const CLAMP_TORQUE_SOURCE = 'US Army TM 5-3895-382-24 Table 11, worm-drive clamps by width of band';

/** What of the heat estimate the bay is coloured by. */
export type HeatView = 'running' | 'soak';

/** deg C. The scale of the colours: from a cool bay to what no hose bears; hotter things have the last colour. */
export const HEAT_SCALE = { leastC: 20, mostC: 260 } as const;

/**
 * Colours from cool to hot that rise in lightness all the way, so that they are told apart without hue: dark blue over grey to
 * yellow, after the map cividis (Nunez, Anderton, Renslow, PLoS ONE 2018), seven of its steps from memory.
 */
const STEPS: readonly (readonly [number, number, number])[] = [
  [0, 34, 78],
  [33, 66, 108],
  [78, 87, 109],
  [112, 113, 115],
  [150, 139, 112],
  [196, 174, 92],
  [254, 232, 56],
];

/** The colour of a temperature, 0 to 255 each for red, green, blue. */
export function heatColour(celsius: number): [number, number, number] {
  const { leastC, mostC } = HEAT_SCALE;
  const share = Math.min(1, Math.max(0, (celsius - leastC) / (mostC - leastC))) * (STEPS.length - 1);
  const at = Math.min(STEPS.length - 2, Math.floor(share));
  const [low, high] = [STEPS[at], STEPS[at + 1]] as [(typeof STEPS)[number], (typeof STEPS)[number]];
  const mix = (k: 0 | 1 | 2): number => Math.round(low[k] + (high[k] - low[k]) * (share - at));
  return [mix(0), mix(1), mix(2)];
}

export function heatColourText(celsius: number): string {
  return `rgb(${heatColour(celsius).join(' ')})`;
}

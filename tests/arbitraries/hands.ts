import type { Hands, NutHands } from '../../shared/document/lay/hands.ts';

/** A nut at which a wrench swings all round and a second one can be held, which `changes` spoil. */
export function nutWith(changes: Partial<NutHands> = {}): NutHands {
  return {
    hexMm: 22.2,
    hexAssumed: true,
    middle: [-20, 0, 0],
    axis: [1, 0, 0],
    up: [0, 0, 1],
    wrench: { lengthMm: 171, headMm: 48.8, thicknessMm: 10, handleMm: 20 },
    swing: {
      goesOn: true,
      widestDeg: 360,
      middleDeg: 180,
      middle: [0, 0, -1],
      sectors: [{ fromDeg: 0, widthDeg: 360 }],
      inTheWay: [],
    },
    second: { hexMm: 22, assumed: false, fits: true, holdDeg: 120, apartDeg: 60 },
    ...changes,
  };
}

/** The same nut with a swing of so many degrees, something in the way. */
export function tightNut(widestDeg: number, changes: Partial<NutHands> = {}): NutHands {
  const { swing } = nutWith();
  const inTheWay = [{ kind: 'skin', id: 'plain', part: 'block' } as const];
  return nutWith({ swing: { ...swing, goesOn: widestDeg > 0, widestDeg, inTheWay }, ...changes });
}

export function handsWith(a: NutHands, b: NutHands, changes: Partial<Hands> = {}): Hands {
  return { a, b, before: [], places: [], basis: ['made up'], ...changes };
}

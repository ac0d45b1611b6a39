import { inchesToMm, mmToInches } from '../../../shared/base/units.ts';
import { GALVANIC_SOURCE, galvanicPair } from '../../../shared/document/materials/galvanic.ts';
import type { FLUIDS } from '../../../shared/document/parts/fluids.ts';
import { FLUID_DENSITY } from '../../../shared/document/parts/hoseWeight.ts';
import type { EndMaterial } from '../../../shared/document/parts/schema.ts';
import { en853Tolerance, lengthTolerance } from '../../../shared/document/rules/lengthTolerance.ts';
import { CLAMP_TORQUE_SOURCE, CLAMP_TORQUES } from '../../../shared/document/torque/clampTorque.ts';
import { TORQUE_TABLES } from '../../../shared/document/torque/torqueTables.ts';
import { fluidState, SAE_J300 } from '../../../shared/solve/flow/fluidState.ts';
import { boreRoughness } from '../../../shared/solve/flow/lineLoss.ts';
import { HOT_SKIN_EMISSIVITY, HOT_SKIN_SOURCE } from '../../../shared/solve/heat/materials.ts';
import type { Cell, Shipped } from './cells.ts';

export const torque = (id: string) => TORQUE_TABLES.find((table) => table.id === id);

export const ofTorque =
  (id: string) =>
  ({ what }: Cell): Shipped => ({
    numbers: torque(id)?.byDash[-Number(what)] ?? [],
    source: torque(id)?.source ?? '',
  });

export const navy = (cell: Cell): Shipped => {
  const table = torque(cell.column <= 2 ? 'navy-steel' : 'navy-aluminium');
  const [least = Number.NaN, most = Number.NaN] = table?.byDash[-Number(cell.what)] ?? [];
  return { numbers: [cell.column === 1 || cell.column === 4 ? least : most], source: table?.source ?? '' };
};

/** Roughness relative to the bore, by column from the second. */
export const ROUGHNESS = [0, 1e-5, 1e-4, 5e-4, 1e-3, 5e-3, 1e-2, 5e-2];

/** Lengths within each row of Table 4-8, in; assembly lengths within each row of EN 853 Table 3, mm. */
const WITHIN_INCH = [12, 24, 36, 48, 72, 100];

const WITHIN_MM = [630, 1250, 2500, 8000, 9000];

export const lengthRow = ({ row }: Cell): Shipped => {
  const cutMm = inchesToMm(WITHIN_INCH[row] as number);
  const { toleranceMm, source } = lengthTolerance(cutMm, 'nbr');
  return { numbers: [row === 5 ? (toleranceMm / cutMm) * 100 : mmToInches(toleranceMm)], source, step: 0.001 };
};

export const en853Row = ({ row, column }: Cell): Shipped => {
  const mm = WITHIN_MM[row] as number;
  const { overMm, underMm, source } = en853Tolerance(mm, [16, 32, 64][column - 1] as number);
  const unit = row >= 3 ? 100 / mm : 1;
  return { numbers: [overMm * unit, -underMm * unit], source };
};

export const clampRow = (cell: Cell): Shipped => ({
  numbers: CLAMP_TORQUES.flatMap((clamp) => (cell.what === 'again' ? clamp.again : clamp.newHose)),
  source: CLAMP_TORQUE_SOURCE,
});

export const METALS: readonly EndMaterial[] = ['aluminium', 'steel', 'stainless', 'brass'];

/** A metal's potential as the pairs with brass have it. */
export const galvanicRow = ({ what }: Cell): Shipped => ({
  numbers: [-450 - galvanicPair(what as EndMaterial, 'brass').apartMv],
  source: GALVANIC_SOURCE,
});

export const roughnessRow = ({ what }: Cell): Shipped => {
  const { low, likely, high, basis } = boreRoughness(what.startsWith('ptfe') ? 'ptfe-smooth' : 'nbr');
  return { numbers: what === 'ptfe' ? [likely] : what === 'ptfe-high' ? [high] : [low, high], source: basis };
};

/** What a run carries of this fluid, flowing at this temperature, as if no viscosity were stated. */
export const flowing = (fluid: (typeof FLUIDS)[number], temperatureC: number) =>
  fluidState({ purpose: 'other', fluid, pressureKpa: 0, temperatureC });

export const oilRow = ({ what, column }: Cell): Shipped => ({
  numbers: [SAE_J300[Number(what) as keyof typeof SAE_J300][column - 1] as number],
  source: flowing('engine-oil', 100)?.basis ?? '',
});

/** Sea water is taken as fresh water and 4 %; the table of 80 deg C lies 2 % high. */
const freshWater = (temperatureC: number): number =>
  (flowing('raw-water', temperatureC)?.viscosityMm2PerS.likely ?? Number.NaN) / 1.04 / 1e6;

export const fluidRow = ({ what }: Cell): Shipped => {
  const basis = flowing('raw-water', 20)?.basis ?? '';
  if (what === 'water-20') return { numbers: [1.023e-6, 2, freshWater(20)], source: basis, step: 1e-8 };
  if (what === 'water-80') return { numbers: [freshWater(80) * 1.02], source: basis, step: 2e-9 };
  const { kgPerM3, source } = FLUID_DENSITY[what as keyof typeof FLUID_DENSITY];
  return { numbers: [kgPerM3], source, step: 0.5 };
};

export const emissivityRow = ({ what }: Cell): Shipped => {
  const { low, likely, high } = HOT_SKIN_EMISSIVITY;
  return { numbers: what === 'hot-skin' ? [likely] : [low, high], source: HOT_SKIN_SOURCE, step: 0.011 };
};

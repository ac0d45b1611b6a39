export { formatClockHour, formatDegrees, formatTurn } from './angle.ts';
export { DIALECT_WORDS, dialectSentence } from './clockDialect.ts';
export { findingNumbers, formatInUnit, isYesOrNo } from './findingNumbers.ts';
export {
  formatClearance,
  formatCutLength,
  formatInches,
  formatLengthBoth,
  formatMm,
  formatNumber,
  formatRadius,
  type InchDenominator,
  isStraight,
  type Rounding,
} from './length.ts';
export { type LengthWriter, lengthWriter } from './lengthWriter.ts';
export {
  formatCost,
  formatDash,
  formatFlow,
  formatPressure,
  formatPressureBand,
  formatSlack,
  formatTemperature,
  formatTemperatureBand,
  formatTemperatureDifference,
} from './quantity.ts';
export { formatFlats, formatTorque } from './torque.ts';

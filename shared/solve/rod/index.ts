export { materialsOfClock } from './materialsOfClock.ts';
export { relaxRod } from './relaxRod.ts';
export { resampleToLength } from './resampleToLength.ts';
export type { ContactField, Gap, RodContact, RodEnd, RodProblem, RodPull, RodShape, RodTwist } from './rodProblem.ts';
export { materialAtEnd, type RodLine, twistBetween } from './twistBetween.ts';

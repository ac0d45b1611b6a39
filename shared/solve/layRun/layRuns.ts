export { tubesOf } from './tubesOf.ts';

/** Version of the program and of its answers; the same as in package.json (tested). Reports carry it. */
export const SOLVER_VERSION = '0.1.0';

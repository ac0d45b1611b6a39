/** Every named tolerance of the program, with its unit and its reason. No algorithm carries a literal of its own. */

/** mm. How far a proven minimum distance may lie below the true one. A caliper reads 0.02; a braid is not rounder than this. */
export const CLEARANCE_PROOF_MM = 0.1;

/** mm. Points closer than this are one point: a tenth of what a wire of a braid is thick. */
export const SAME_POINT_MM = 0.01;

/** rad. Directions closer than this are one direction: 1/1000 degree, far under any protractor. */
export const SAME_DIRECTION_RAD = 1.75e-5;

/** mm. A relaxed rod's ends meet their places within this. */
export const ROD_CLOSURE_MM = 1e-6;

/** Relative. A relaxed rod's remaining out-of-balance force, against EI / L^2. */
export const ROD_RESIDUAL = 1e-8;

/** Relative. A measured value this close to its limit counts as meeting it: rounding, not engineering. */
export const LIMIT_RELATIVE = 1e-6;

/** mm. Lengths under this are rounding of double arithmetic on bay-sized numbers, not geometry. */
export const ROUNDING_MM = 1e-9;

/** rad. Angles under this between unit vectors are rounding of double arithmetic. */
export const ROUNDING_RAD = 1e-9;

/** rad. A 12 o'clock direction nearer than this to its axis gives no 12 o'clock: 1 degree, what an eye places by hand. */
export const UP_ALONG_AXIS_RAD = 0.01745;

/** Cells. A triangle this near to a cell of a distance grid counts as touching it: far above rounding, far below any use. */
export const VOXEL_TOUCH_CELLS = 1e-9;

/**
 * Relative. A least radius this close under its limit counts as meeting it: the accuracy with which the laid curve's
 * curvature is known (spline through rod nodes, and the gap of its proof). Makers print whole millimetres.
 */
export const RADIUS_RELATIVE = 0.001;

/** Ratio. What a search leaves of the shortest way, and a rod of its length: a slack this little under the wanted one counts as that. */
export const SLACK_LEFT = 0.001;

/** deg. A stretch that falls less than this is level: no level in a shop reads finer. */
export const LEVEL_DEG = 0.1;

/**
 * Steps of what is printed (0.1 mm, 1/16 in, 0.1 %). A value this close to a whole step is that step, whichever way print
 * rounds: it is noise of a sum or a solver, ten nanometres in a length. Anything more is rounded to the safe side.
 */
export const PRINT_STEP_NOISE = 1e-4;

/**
 * Relative, as ROD_RESIDUAL. A hose whose shape could not be made stiller than its own arithmetic allows (a very light
 * hose free to roll about its chord) counts as at rest when this little is out of balance.
 */
export const AT_REST_RESIDUAL = 1e-6;

/** mm. C and drop of an end agree with its lengths and its angle within this: two caliper readings and a square, and half a degree on 60 mm. */
export const END_AGREES_MM = 1;

/** deg. The bend of an end read off two edges of its rim with a caliper agrees with what it is sold as within this: 0.3 mm on a rim of 8. */
export const RIM_ANGLE_AGREES_DEG = 3;

/** mm. Two ways of measuring one short thing, such as a rim or a gap, agree within this: two caliper readings on a rounded edge. */
export const CALIPER_AGREES_MM = 0.6;

/** Relative. Heat that is out of balance at a node of a hose, against all that the place takes in: a thousandth of what a reader is told. */
export const HEAT_BALANCE = 1e-6;

/** mm. How far a moving part may reach out of the surface that stands for all it sweeps; that much more is kept from it. A belt flaps further. */
export const SWEEP_WITHIN_MM = 0.25;

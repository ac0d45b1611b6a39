/** The numbers that steer the relaxation. None of them moves the shape it arrives at; all are without dimension. */

/** Iterations after which a relaxation gives up, unless told otherwise. */
export const MAX_ITERATIONS = 200;

/** Times a saddle is left for a lower shape before giving up. */
export const MAX_ESCAPES = 6;

/** Largest turn of any edge in one step, as the tangent of the angle; beyond it the quadratic picture is worthless. */
export const MAX_EDGE_TURN = 1.2;

/** Largest turn of an end's clock in one step, rad. */
export const MAX_CLOCK_TURN = 0.7;

/** Always added to the Hessian's diagonal, in units of EI l / L^2: keeps neutral movements from blowing up. */
export const NEUTRAL_SHIFT = 1e-9;

/** A lowest eigenvalue above minus this, in units of EI l / L^2, is not held to be unstable. */
export const STABLE_SHIFT = 1e-5;

/** First shift tried when a step needs convexity, in units of EI l / L^2; the lowest mode of a free rod has about 10. */
export const FIRST_SHIFT = 4;

/** Factor between one shift and the next. */
export const SHIFT_GROWTH = 4;

/** Shifts tried for one step; 4^20 exceeds every stiffness a rod of 1000 edges can show. */
export const MAX_SHIFTS = 20;

/** Part of the closure's share in the merit that must outweigh the energy's climb, and the reserve on top of it. */
export const PENALTY_SHARE = 0.9;
export const PENALTY_RESERVE = 1.5;

/** Part of the predicted decrease a step must bring (Armijo). */
export const SUFFICIENT_DECREASE = 1e-4;

/** Halvings of one step before it is refused. */
export const MAX_HALVINGS = 14;

/** Rounding allowed in comparing two energies, relative. */
export const ENERGY_ROUNDING = 1e-13;

/** Length and distance of the ends nearer than this (relative) are equal: a straight hose. */
export const STRAIGHT_RELATIVE = 1e-10;

/** Residual (as in `RodShape`) below which an indefinite Hessian is read as a saddle ahead. */
export const SADDLE_RESIDUAL = 1e-2;

/** Steps refused one after the other, each with a larger shift, before giving up. */
export const MAX_REFUSED = 6;

/** Turn of an edge by which a saddle is left, rad. */
export const ESCAPE_TURN = 0.25;

/** mm. Deepest a node may stay pressed into a surface before the contact is made stiffer: half of a caliper's doubt. */
export const MAX_PRESSED_MM = 0.05;

/** N/mm, contact stiffness of a node to begin with. Common practice, no source: a few N press it in under 0.1 mm. */
export const CONTACT_STIFFNESS_N_PER_MM = 20;

/** Times the contact may be made stiffer. */
export const MAX_STIFFENINGS = 5;

/** Factor by which it is made stiffer. */
export const STIFFENING = 10;

/** Fraction of a step from which on the end force is taken over whole. */
export const WHOLE_STEP = 0.4;

/** A fraction of a step up to this is a short one. */
export const SHORT_STEP = 0.13;

/** Short steps in a row, touching, before creases are looked for. */
export const MAX_SHORT = 4;

/** Times the surfaces at creases are taken anew as planes. */
export const MAX_CREASE_ROUNDS = 12;

/** Residual (as in `RodShape`) below which an end force guessed for the starting shape is kept. */
export const FORCE_GUESS_RESIDUAL = 0.1;

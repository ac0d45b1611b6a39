/** A day as the project keeps it. */
export const DAY = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;
export const DAY_HINT = 'such as 2026-05-12';
export const DAY_WRONG = 'Expected a day such as 2026-05-12.';

/** One value with the way back to what it was. A step carries the name of the edit that made it. */
export interface History<T> {
  readonly past: readonly Step<T>[];
  readonly present: T;
  readonly future: readonly Step<T>[];
}

interface Step<T> {
  readonly name: string;
  readonly value: T;
}

/** Steps kept: more than anyone steps back through in one sitting, and a project is a few kilobytes. */
const STEPS_KEPT = 200;

export function historyOf<T>(present: T): History<T> {
  return { past: [], present, future: [] };
}

/**
 * The history after an edit. An edit that changes nothing leaves no step. An edit of the same name as the last one, with
 * `joinLast`, replaces its result, so that a drag or a held arrow key is one step back.
 */
export function record<T>(history: History<T>, name: string, value: T, joinLast = false): History<T> {
  if (value === history.present) return history;
  const last = history.past.at(-1);
  const joins = joinLast && last?.name === name && history.future.length === 0;
  const past = joins ? history.past : [...history.past, { name, value: history.present }].slice(-STEPS_KEPT);
  return { past, present: value, future: [] };
}

export function undo<T>(history: History<T>): History<T> {
  const step = history.past.at(-1);
  if (step === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: step.value,
    future: [{ name: step.name, value: history.present }, ...history.future],
  };
}

export function redo<T>(history: History<T>): History<T> {
  const step = history.future[0];
  if (step === undefined) return history;
  return {
    past: [...history.past, { name: step.name, value: history.present }],
    present: step.value,
    future: history.future.slice(1),
  };
}

/** Name of the edit that undo would take back, or redo would bring again. */
export function undoName<T>(history: History<T>): string | undefined {
  return history.past.at(-1)?.name;
}

export function redoName<T>(history: History<T>): string | undefined {
  return history.future[0]?.name;
}

/** What the exit code says. 1 and 2 are answers about the input, 70 is ours, 130 is the shell's own for Ctrl-C. */
export const EXIT = {
  clean: 0,
  doNotCut: 1,
  badInput: 2,
  ownFault: 70,
  cancelled: 130,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Name of the worker that does short jobs beside the long ones: it reads no more of the program than each of them needs. */
export const SHORT_JOBS = 'short jobs';

import { fileURLToPath } from 'node:url';
import { parentPort, workerData } from 'node:worker_threads';
import { startThread } from '../../electron/node/startThread.ts';

/** Told a memory, has a thread of its own count up in it for ever. */
parentPort?.on('message', (memory: SharedArrayBuffer) => {
  if (workerData === 'counts') for (;;) Atomics.add(new Int32Array(memory), 0, 1);
  const file = fileURLToPath(import.meta.url);
  startThread<SharedArrayBuffer, never>(
    file,
    'counts',
    () => undefined,
    () => undefined,
  ).post(memory);
});

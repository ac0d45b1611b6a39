import { fileURLToPath } from 'node:url';
import { workerData } from 'node:worker_threads';
import { serveLaysHere } from './serveLaysHere.ts';
import { LAYS } from './threadCrew.ts';

// One file for both kinds of worker, so that the one finds the other wherever the program was built to. What only jobs
// need is read only for them.
if (workerData === LAYS) serveLaysHere();
else (await import('./serveJobsHere.ts')).serveJobsHere(fileURLToPath(import.meta.url));

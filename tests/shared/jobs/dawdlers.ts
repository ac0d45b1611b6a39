import { seededRandom } from '../../../shared/base/random.ts';
import { type Crew, openCrew } from '../../../shared/jobs/crew.ts';
import { serveLays } from '../../../shared/jobs/serveLays.ts';

/** Real workers with a copy of each message between, that answer after a seeded while, so that any of them may be first. */
export function dawdlers(most: number, seed: number): Crew {
  const random = seededRandom(seed);
  const later = (work: () => void): void => void setTimeout(work, 4 * random());
  return openCrew({
    start: (receive) => {
      const serve = serveLays({ post: (message) => later(() => receive(structuredClone(message))), now: () => 0 });
      let before = Promise.resolve();
      return {
        post: (message) => {
          const copy = structuredClone(message);
          before = before.then(() => serve(copy));
        },
        terminate: () => undefined,
      };
    },
    most,
    canShareMemory: false,
  });
}

import {
  type AsBuilt,
  type HoseClamps,
  MADE_ON,
  type Project,
  type Run,
  type Service,
} from '../../../shared/document/project/schema.ts';
import { withRun } from './withRun.ts';

/** Which end of a run an edit speaks of. */
export type EndTag = 'a' | 'b';

export function setRunName(project: Project, runId: string, name: string): Project {
  return withRun(project, runId, (run) => (name.trim() === '' ? run : { ...run, name: name.trim() }));
}

export function setService(project: Project, runId: string, change: Partial<Service>): Project {
  return withRun(project, runId, (run) => ({ ...run, service: { ...run.service, ...change } }));
}

/** Figures of a service that need not be known. */
export type KnownFigure = 'flowLPerMin' | 'viscosityMm2PerS' | 'turboPressureKpa' | 'shaftTiltDeg' | 'housingTurnDeg';

/** A figure of the service; undefined = not known. */
export function setFigure(project: Project, runId: string, figure: KnownFigure, value: number | undefined): Project {
  return withRun(project, runId, (run) => {
    const { [figure]: _old, ...service } = run.service;
    return { ...run, service: value === undefined ? service : { ...service, [figure]: value } };
  });
}

/** Which way the fluid goes; from END A to END B unless said otherwise. */
export function setFlow(project: Project, runId: string, flow: NonNullable<Run['flow']>): Project {
  return withRun(project, runId, ({ flow: _old, ...run }) => (flow === 'a-to-b' ? run : { ...run, flow }));
}

/** Whether a bleed is fitted where the hose is highest. */
export function setBled(project: Project, runId: string, isBled: boolean): Project {
  return withRun(project, runId, ({ bledAtCrest: _old, ...run }) => (isBled ? { ...run, bledAtCrest: true } : run));
}

/** Whether the stretch that begins at END A (`a`) or at a clamp or pass-through lies in one plane. */
export function setOnePlane(project: Project, runId: string, from: string, isFlat: boolean): Project {
  return withRun(project, runId, ({ onePlane = [], ...run }) => {
    const others = onePlane.filter((id) => id !== from);
    const next = isFlat ? [...others, from] : others;
    return next.length === 0 ? run : { ...run, onePlane: next };
  });
}

/** A hose that is cut already, mm; undefined = it is still to be cut. */
export function setCutLength(project: Project, runId: string, cutLengthMm: number | undefined): Project {
  return withRun(project, runId, ({ cutLengthMm: _old, ...run }) =>
    cutLengthMm === undefined ? run : { ...run, cutLengthMm },
  );
}

/** What is known of the turbo that an oil feed goes to, whole: what is left out is not known, or not fitted. */
export function setTurboFeed(
  project: Project,
  runId: string,
  feed: Pick<Service, 'bearing' | 'restrictorMm'>,
): Project {
  return withRun(project, runId, (run) => {
    const { bearing: _b, restrictorMm: _r, ...service } = run.service;
    return { ...run, service: { ...service, ...feed } };
  });
}

/** Which end of a water hose is at the turbo; undefined = not known. */
export function setTurboAt(project: Project, runId: string, turboAt: Service['turboAt']): Project {
  return withRun(project, runId, (run) => {
    const { turboAt: _old, ...service } = run.service;
    return { ...run, service: turboAt === undefined ? service : { ...service, turboAt } };
  });
}

/** slack: live length over taut length, less one; 0 to 0.5 */
export function setSlack(project: Project, runId: string, slack: number): Project {
  return withRun(project, runId, (run) => ({ ...run, slack: Math.min(0.5, Math.max(0, slack)) }));
}

export function setHose(project: Project, runId: string, hose: string): Project {
  return withRun(project, runId, (run) => ({ ...run, hose }));
}

/** Another end of the parts list at END A or END B. Its own clock is free again, and its hose clamps are not known: they belonged to the old end. */
export function setEnd(project: Project, runId: string, tag: EndTag, end: string): Project {
  return withRun(project, runId, (run) =>
    run[tag].end === end ? run : { ...run, [tag]: { port: run[tag].port, end } },
  );
}

/** Both ends at once, as one edit. */
export function setEnds(project: Project, runId: string, ends: Readonly<Record<EndTag, string>>): Project {
  return setEnd(setEnd(project, runId, 'a', ends.a), runId, 'b', ends.b);
}

/** Own clock of an end about its port, degrees from the port's 12 o'clock; undefined = free, the program chooses. */
export function setOwnClock(project: Project, runId: string, tag: EndTag, clockDeg: number | undefined): Project {
  return withRun(project, runId, (run) => {
    const { clockDeg: _old, ...bare } = run[tag];
    return { ...run, [tag]: clockDeg === undefined ? bare : { ...bare, clockDeg } };
  });
}

/** How the hose clamps of an end sit; undefined = not known. */
export function setHoseClamps(project: Project, runId: string, tag: EndTag, clamps: HoseClamps | undefined): Project {
  return withRun(project, runId, (run) => {
    const { hoseClamps: _old, ...bare } = run[tag];
    return { ...run, [tag]: clamps === undefined ? bare : { ...bare, hoseClamps: clamps } };
  });
}

/** The hose as the bench measured it; undefined = none yet. */
export function setAsBuilt(project: Project, runId: string, built: AsBuilt | undefined): Project {
  return withRun(project, runId, ({ asBuilt: _old, ...run }) =>
    built === undefined ? run : { ...run, asBuilt: built },
  );
}

/** When the hose was made, `2026-05` or `2026-05-12`; '' = not known. What is neither changes nothing. */
export function setMadeOn(project: Project, runId: string, madeOn: string): Project {
  if (madeOn !== '' && !MADE_ON.test(madeOn)) return project;
  return withRun(project, runId, ({ madeOn: _old, ...run }) => (madeOn === '' ? run : { ...run, madeOn }));
}

/** undefined = no sleeve */
export function setSleeve(project: Project, runId: string, sleeve: string | undefined): Project {
  return withRun(project, runId, ({ sleeve: _old, ...run }) => (sleeve === undefined ? run : { ...run, sleeve }));
}

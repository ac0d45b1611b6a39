import type { Problem } from '../../base/result.ts';
import { SAME_POINT_MM, UP_ALONG_AXIS_RAD } from '../../base/tolerances.ts';
import { angleBetween, distance, unit } from '../../base/vec3.ts';
import { shortJson } from '../problems/shortJson.ts';
import { ruleById } from '../rules/index.ts';
import { CHASSIS_BODY, PLAIN_SKIN, type Port, type Project, type Run, type RunEnd } from './schema.ts';

/**
 * What one part of a project says about another, checked once its shape is right: ids given twice, ports, bodies, runs
 * and rules named but not there, a port taken by two hoses, an `up` along its axis, two ports on one outlet of a tee. Parts
 * of the user's tables are not looked up here.
 */
export function crossReferenceProblems(project: Project): Problem[] {
  return [
    ...duplicates('bay.skins', project.bay.skins),
    ...duplicates('bay.bodies', project.bay.bodies),
    ...duplicates('ports', project.ports),
    ...duplicates('runs', project.runs),
    ...project.runs.flatMap((run, i) => duplicates(`runs[${i}].supports`, run.supports)),
    ...project.runs.flatMap((run, i) => duplicates(`runs[${i}].locks`, run.locks ?? [])),
    ...bundleProblems(project),
    ...project.runs.flatMap((run, i) => planeProblems(run, `runs[${i}].onePlane`)),
    ...keptIds(project),
    ...motionProblems(project),
    ...project.runs.flatMap((run, i) =>
      run.supports.flatMap((s, k) => bodyProblems(project, s.body, `runs[${i}].supports[${k}].body`)),
    ),
    ...project.ports.flatMap((port, i) => portProblems(project, port, `ports[${i}]`)),
    ...sharedSeatProblems(project.ports),
    ...runPortProblems(project),
    ...overrideProblems(project),
  ];
}

function problem(path: string, message: string, value: unknown): Problem {
  const got = shortJson(value);
  return { path, message, ...(got === undefined ? {} : { got }) };
}

function duplicates(path: string, items: readonly { id: string }[]): Problem[] {
  const first = new Map<string, number>();
  return items.flatMap(({ id }, i) => {
    const earlier = first.get(id);
    if (earlier !== undefined)
      return [problem(`${path}[${i}].id`, `the id is taken by ${path}[${earlier}]; give each its own`, id)];
    first.set(id, i);
    return [];
  });
}

function bundleProblems({ bundles = [], runs }: Project): Problem[] {
  const known = runs.map((r) => r.id);
  const takenBy = new Map<string, number>();
  const named = bundles.flatMap((bundle, i) =>
    bundle.runs.flatMap((run, k) => {
      const path = `bundles[${i}].runs[${k}]`;
      if (!known.includes(run)) return [problem(path, `no run has this id${list(known)}`, run)];
      const earlier = takenBy.get(run);
      takenBy.set(run, earlier ?? i);
      return earlier === undefined
        ? []
        : [problem(path, `a run is in one bundle, once; this one is in bundles[${earlier}]`, run)];
    }),
  );
  return [...duplicates('bundles', bundles), ...named];
}

function planeProblems(run: Run, path: string): Problem[] {
  const begins = ['a', ...run.supports.filter((s) => s.kind !== 'waypoint').map((s) => s.id)];
  return (run.onePlane ?? []).flatMap((from, i) =>
    begins.includes(from)
      ? []
      : [problem(`${path}[${i}]`, `no clamp or pass-through of this run has this id${list(begins)}`, from)],
  );
}

function keptIds(project: Project): Problem[] {
  return project.bay.skins.flatMap((skin, i) =>
    skin.id === PLAIN_SKIN.id && skin.kind !== 'plain'
      ? [problem(`bay.skins[${i}].id`, 'the id "plain" is kept for skins of kind plain', skin.kind)]
      : [],
  );
}

function bodyProblems(project: Project, body: string | undefined, path: string): Problem[] {
  const known = [CHASSIS_BODY.id, ...project.bay.bodies.map((b) => b.id)];
  if (body === undefined || known.includes(body)) return [];
  return [problem(path, `no body has this id; known: ${[...new Set(known)].join(', ')}`, body)];
}

/** Everything moves against the chassis, so the chassis itself stands still. */
function motionProblems(project: Project): Problem[] {
  return project.bay.bodies.flatMap((body, i) =>
    body.id === CHASSIS_BODY.id && body.motion !== undefined
      ? [
          problem(
            `bay.bodies[${i}].motion`,
            'the chassis stands still: all else moves against it; give the motion to the body that rocks',
            body.id,
          ),
        ]
      : [],
  );
}

function portProblems(project: Project, port: Port, path: string): Problem[] {
  const problems: Problem[] = bodyProblems(project, port.body, `${path}.body`);
  const angle = angleBetween(unit(port.axis), unit(port.up));
  if (Math.min(angle, Math.PI - angle) < UP_ALONG_AXIS_RAD)
    problems.push(
      problem(`${path}.up`, "up lies along the port's axis, so it gives no 12 o'clock; point it across", port.up),
    );
  return problems;
}

/** Ports on one seat are the outlets of one tee: they share what is screwed on up to it, and then go on from different outlets. */
function sharedSeatProblems(ports: readonly Port[]): Problem[] {
  return ports.flatMap((port, i) =>
    ports.slice(0, i).flatMap((other, k) => {
      const [own, theirs] = [port.adapters ?? [], other.adapters ?? []];
      if (own.length + theirs.length === 0) return [];
      if (distance(port.seatPoint, other.seatPoint) > SAME_POINT_MM) return [];
      const part = own.findIndex((use, n) => JSON.stringify(use) !== JSON.stringify(theirs[n]));
      const [mine, its] = [own[part], theirs[part]];
      const parts =
        mine !== undefined &&
        its !== undefined &&
        mine.outlet !== its.outlet &&
        JSON.stringify({ ...mine, outlet: '' }) === JSON.stringify({ ...its, outlet: '' });
      const message = `it stands on the seat of ports[${k}]: two ports on one seat share their adapters up to a tee, clocks and all, and go on from its two outlets`;
      return parts
        ? []
        : [
            problem(
              `ports[${i}].adapters`,
              message,
              own.map((use) => use.adapter),
            ),
          ];
    }),
  );
}

function runPortProblems(project: Project): Problem[] {
  const known = new Set(project.ports.map((p) => p.id));
  const takenBy = new Map<string, string>();
  const ends: [string, RunEnd][] = project.runs.flatMap((run, i): [string, RunEnd][] => [
    [`runs[${i}].a`, run.a],
    [`runs[${i}].b`, run.b],
  ]);
  return ends.flatMap(([path, end]) => {
    if (!known.has(end.port)) return [problem(`${path}.port`, `no port has this id${list([...known])}`, end.port)];
    const other = takenBy.get(end.port);
    takenBy.set(end.port, other ?? path);
    return other === undefined
      ? []
      : [problem(`${path}.port`, `a port takes one hose; this one is taken by ${other}`, end.port)];
  });
}

function overrideProblems(project: Project): Problem[] {
  const runs = project.runs.map((r) => r.id);
  const seenPairs = new Map<string, number>();
  return project.overrides.flatMap((o, i) => {
    const path = `overrides[${i}]`;
    const rule = ruleById(o.rule);
    const problems: Problem[] = [];
    if (rule === undefined) problems.push(problem(`${path}.rule`, 'no rule has this id', o.rule));
    else if (!rule.overridable)
      problems.push(problem(`${path}.rule`, `the rule "${rule.title}" may not be overridden`, o.rule));
    else if (o.value < 0 !== rule.value < 0 && o.value !== 0)
      problems.push(problem(`${path}.value`, `expected a value of the same sign as the rule's ${rule.value}`, o.value));
    if (o.run !== undefined && !runs.includes(o.run))
      problems.push(problem(`${path}.run`, `no run has this id${list(runs)}`, o.run));
    const pair = `${o.rule} ${o.run ?? ''}`;
    const earlier = seenPairs.get(pair);
    if (earlier !== undefined)
      problems.push(problem(path, `overrides[${earlier}] already sets this rule for the same runs`, o.rule));
    else seenPairs.set(pair, i);
    return problems;
  });
}

function list(ids: readonly string[]): string {
  return ids.length === 0
    ? '; there are none yet'
    : `; known: ${ids.slice(0, 12).join(', ')}${ids.length > 12 ? ', …' : ''}`;
}

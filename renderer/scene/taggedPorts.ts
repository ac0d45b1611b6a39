import type { Port, Project } from '../../shared/document/project/schema.ts';
import { freePorts } from '../state/edits/newRun.ts';
import type { Joins } from '../state/handStore.ts';
import type { Step } from '../state/sessionStore.ts';

/**
 * Ports that carry a tag in the picture: the chosen run's, by its END tags; while ports are worked on all of them, by their
 * number on the list; while a run is stated, those that it may join, by name where it does not join them yet.
 */
export function taggedPorts(
  project: Project,
  runId: string | null,
  step: Step,
  joins: Joins | null,
): readonly { readonly port: Port; readonly text: string }[] {
  const run = project.runs.find((r) => r.id === runId);
  if (step === 'ports') return project.ports.map((port, i) => ({ port, text: String(i + 1) }));
  if (joins !== null)
    return freePorts(project).map((port) => ({ port, text: endTag(joins, port.id) ?? shortened(port.name) }));
  const tags = [
    { id: run?.a.port, tag: 'END A' },
    { id: run?.b.port, tag: 'END B' },
  ];
  return tags.flatMap(({ id, tag }) => {
    const port = project.ports.find((p) => p.id === id);
    return port === undefined ? [] : [{ port, text: tag }];
  });
}

function endTag({ a, b }: Joins, port: string): string | undefined {
  return { [b]: 'END B', [a]: 'END A' }[port];
}

const LONGEST_NAME = 24;

function shortened(name: string): string {
  return name.length <= LONGEST_NAME ? name : `${name.slice(0, LONGEST_NAME - 1)}…`;
}

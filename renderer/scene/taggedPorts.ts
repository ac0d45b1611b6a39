import type { Port, Project } from '../../shared/document/project/schema.ts';
import type { Step } from '../state/sessionStore.ts';

/**
 * Ports that carry a tag in the picture: the chosen run's, by its END tags; while ports are worked on all of them, by their
 * number on the list.
 */
export function taggedPorts(
  project: Project,
  runId: string | null,
  step: Step,
): readonly { readonly port: Port; readonly text: string }[] {
  const run = project.runs.find((r) => r.id === runId);
  if (step === 'ports') return project.ports.map((port, i) => ({ port, text: String(i + 1) }));
  const tags = [
    { id: run?.a.port, tag: 'END A' },
    { id: run?.b.port, tag: 'END B' },
  ];
  return tags.flatMap(({ id, tag }) => {
    const port = project.ports.find((p) => p.id === id);
    return port === undefined ? [] : [{ port, text: tag }];
  });
}

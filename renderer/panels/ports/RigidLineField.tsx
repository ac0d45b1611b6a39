import type { Port } from '../../../shared/document/project/schema.ts';
import { setRigidLine } from '../../state/edits/portEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { MaybeLengthField } from '../MaybeLengthField.tsx';

/** Whether a port is the end of a rigid line, and where that line is first held. */
export function RigidLineField({ port }: { port: Port }) {
  const { document } = useBench();
  const set = (line: Port['rigidLine']): void =>
    document.edit(`rigid line at ${port.name}`, (project) => setRigidLine(project, port.id, line));
  return (
    <>
      <label className="check">
        <input
          type="checkbox"
          checked={port.rigidLine !== undefined}
          onChange={(event) => set(event.target.checked ? {} : undefined)}
        />
        It is the end of a rigid line
      </label>
      {port.rigidLine !== undefined && (
        <MaybeLengthField
          label="From the hose to where that line is first held"
          hint="not said"
          mm={port.rigidLine.clampMm}
          mayBeZero
          onSet={(clampMm) => set(clampMm === undefined ? {} : { clampMm })}
        />
      )}
    </>
  );
}

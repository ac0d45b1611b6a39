import type { Project } from '../../../shared/document/project/schema.ts';
import { putBack } from '../../state/edits/cutOutEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';

/** Pieces of the scan that were made parts of their own, and where that is done. */
export function CutOuts({ project }: { project: Project }) {
  const { document, section } = useBench();
  const pieces = project.bay.cutOuts ?? [];
  return (
    <section className="bay-parts" aria-label="Parts cut out of the scan">
      <h3>Parts cut out of the scan</h3>
      <p className="teach">
        A scan is often one piece. Cut it open by the box until the exhaust, or whatever differs, stands alone, and make
        that a part: then it can be hot, composite or moving by itself.
      </p>
      {pieces.length > 0 && (
        <ul className="supports" aria-label="Pieces cut out">
          {pieces.map(({ name, of }, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a piece is its place in the order of cutting
            <li key={at} className="support support-asked">
              <span className="support-name">
                {name}
                {of !== undefined && <span className="value-note">out of {of}</span>}
              </span>
              <Button
                name={`Put ${name} back`}
                onPress={() => document.edit('put a piece back', (now) => putBack(now, at))}
              >
                Put back
              </Button>
            </li>
          ))}
        </ul>
      )}
      <div>
        <Button onPress={section.open}>Cut the bay open</Button>
      </div>
    </section>
  );
}

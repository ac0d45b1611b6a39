import { useStore } from 'zustand';
import type { MeshLook } from '../../state/onNewBay.ts';
import { UP_AXES } from '../../state/onNewBay.ts';
import { useBench } from '../../state/useBench.ts';
import { Outline } from './Outline.tsx';
import { viewFrom } from './views.ts';

/** The scan as it would stand, once for each axis of its file: the one that stands right is clicked. */
export function UpQuestion({ look }: { look: MeshLook }) {
  const { onNewBay } = useBench();
  const upAxis = useStore(onNewBay, (state) => state.upAxis);
  return (
    <>
      <fieldset className="new-bay-ups">
        <legend>Choose the picture in which the bay stands as it does in the workshop</legend>
        {UP_AXES.map((axis) => {
          const { right, up } = viewFrom(axis);
          return (
            <label key={axis} className={axis === upAxis ? 'new-bay-up new-bay-up-chosen' : 'new-bay-up'}>
              <Outline look={look} right={right} up={up} widthPx={250} heightPx={150} />
              <span>
                <input
                  type="radio"
                  name="up-axis"
                  checked={axis === upAxis}
                  onChange={() => onNewBay.set({ upAxis: axis })}
                />{' '}
                {axis} of the file is up
              </span>
            </label>
          );
        })}
      </fieldset>
      <p className="teach">
        Drains and trapped air go by the plumb line. A floor or a face that is truly level sets it finely, once the bay
        is on the bench: step 1, “Level the bay”.
      </p>
    </>
  );
}

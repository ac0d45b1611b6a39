import { useEffect, useRef } from 'react';
import { KEY_ACTIONS } from '../../state/keys.ts';
import { useBench, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { SafetyLines } from '../papers/PapersCard.tsx';

/** All keys, and what the program is and is not. */
export function KeyList() {
  const { session } = useBench();
  const shown = useSession((state) => state.keysShown);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (shown) dialog.current?.showModal();
    else dialog.current?.close();
  }, [shown]);
  const close = (): void => session.set({ keysShown: false });
  return (
    <dialog ref={dialog} className="slip keys" aria-labelledby="keys-title" onClose={close}>
      <div className="slip-head">
        <h2 id="keys-title">Keys</h2>
        <Button onPress={close}>Close</Button>
      </div>
      <dl className="key-list">
        {KEY_ACTIONS.map(({ shown: key, words }) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      <p>
        In the bay: pull the chosen hose, or what holds it; Shift leaves a clamp, Alt keeps to the surface. On the
        straight view: drag along the rule to mark a stretch, or a clamp along the hose; arrow keys move the place along
        the hose, with Shift by 10 mm; Home is END A, End is END B.
      </p>
      <h2>About</h2>
      <SafetyLines />
    </dialog>
  );
}

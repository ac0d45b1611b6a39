import { Component, lazy, type ReactNode, Suspense, useEffect, useState } from 'react';
import { BayTools } from '../panels/bay/BayTools.tsx';
import { MiddleMark } from '../panels/bay/MiddleMark.tsx';
import { useBench, useDocument, useJobs, useSession } from '../state/useBench.ts';
import { Button } from '../widgets/Button.tsx';

/** What draws the bay, with the type face of its tags, which are drawn once: read beside the bay itself, not before it. */
const readScene = () =>
  Promise.all([import('../scene/BayScene.tsx'), document.fonts.load("650 12px 'Archivo Variable'").catch(() => [])]);
const BayScene = lazy(async () => ({ default: (await readScene())[0].BayScene }));

/** Begins to read what draws the bay. */
export function awaitBay(): void {
  // Where it cannot be read, the picture says so once it is wanted.
  readScene().catch(() => undefined);
}

/** The bay's place in the window, or why there is no picture and what works without it. */
export function BayPlace() {
  const { session } = useBench();
  const picture = useSession((state) => state.picture);
  const [able] = useState(canDraw);
  const unread = useDocument(({ open }) => open?.bay === null);
  const busy = useJobs(({ current }) => current !== null);
  useEffect(() => {
    if (!able) session.set({ picture: 'no-webgl' });
  }, [able, session]);
  if (!able || picture === 'no-webgl') return <NoPicture />;
  return (
    <PictureGuard onBroken={() => session.set({ picture: 'no-webgl' })}>
      <Suspense>
        <BayScene />
      </Suspense>
      {unread && !busy && <NotRead />}
      <BayTools />
      <MiddleMark />
      {picture === 'lost' && (
        <p className="picture-note" role="status">
          The graphics card gave the picture up; it comes back by itself as soon as the card does. Laying, checking and
          papers go on without it.
        </p>
      )}
    </PictureGuard>
  );
}

/** Reading the bay was stopped, or broke off. */
function NotRead() {
  const { readBay } = useBench();
  return (
    <section className="empty bay-unread" aria-labelledby="not-read">
      <h2 id="not-read">The bay is not read yet</h2>
      <p>Its project is open and everything stated in it is there; only the mesh was not read to its end.</p>
      <div className="empty-buttons">
        <Button look="main" onPress={() => void readBay()}>
          Read the bay
        </Button>
      </div>
    </section>
  );
}

function NoPicture() {
  return (
    <section className="empty no-picture" aria-labelledby="no-picture">
      <h2 id="no-picture">No picture of the bay on this machine</h2>
      <p>
        The window could not start 3D drawing (WebGL 2). Laying, checks, the straight view, papers and every value work
        without it. To see the bay, switch hardware acceleration on, or update the graphics driver, and start the window
        again.
      </p>
    </section>
  );
}

function canDraw(): boolean {
  const trial = document.createElement('canvas').getContext('webgl2');
  trial?.getExtension('WEBGL_lose_context')?.loseContext();
  return trial !== null;
}

interface PictureGuardProps {
  readonly children: ReactNode;
  readonly onBroken: () => void;
}

/** A picture that breaks takes only itself along, never the window. */
class PictureGuard extends Component<PictureGuardProps, { broken: boolean }> {
  override state = { broken: false };
  static getDerivedStateFromError(): { broken: boolean } {
    return { broken: true };
  }
  override componentDidCatch(): void {
    this.props.onBroken();
  }
  override render(): ReactNode {
    return this.state.broken ? null : this.props.children;
  }
}

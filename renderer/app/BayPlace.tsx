import { Component, type ReactNode, useState } from 'react';
import { BayTools } from '../panels/bay/BayTools.tsx';
import { BayScene } from '../scene/BayScene.tsx';
import { useBench, useSession } from '../state/useBench.ts';

/** The bay's place in the window, or why there is no picture and what works without it. */
export function BayPlace() {
  const { session } = useBench();
  const picture = useSession((state) => state.picture);
  const [able] = useState(canDraw);
  if (!able || picture === 'no-webgl') return <NoPicture />;
  return (
    <PictureGuard onBroken={() => session.set({ picture: 'no-webgl' })}>
      <BayScene />
      <BayTools />
      {picture === 'lost' && (
        <p className="picture-note" role="status">
          The graphics card gave the picture up; it comes back by itself as soon as the card does. Laying, checking and
          papers go on without it.
        </p>
      )}
    </PictureGuard>
  );
}

function NoPicture() {
  return (
    <section className="empty" aria-labelledby="no-picture">
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

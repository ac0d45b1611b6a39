import type { Port } from '../../shared/document/project/schema.ts';
import type { ScenePalette } from './palette.ts';
import { ScreenLabel } from './ScreenLabel.tsx';
import { tagLabel } from './three/labelTexture.ts';
import { useDisposed } from './useDisposed.ts';

interface PortTagsProps {
  readonly ports: readonly { readonly port: Port; readonly text: string }[];
  readonly palette: ScenePalette;
  /** what a click on a tag does; absent = nothing */
  readonly onPick?: ((port: string) => void) | undefined;
}

/** A paper tag at each named port. */
export function PortTags({ ports, palette, onPick }: PortTagsProps) {
  return ports.map(({ port, text }) => (
    <PortTag key={port.id} port={port} text={text} palette={palette} onPick={onPick} />
  ));
}

interface PortTagProps extends Pick<PortTagsProps, 'palette' | 'onPick'> {
  readonly port: Port;
  readonly text: string;
}

function PortTag({ port, text, palette, onPick }: PortTagProps) {
  const made = useDisposed(() => {
    const label = tagLabel(text, palette.tag);
    return { label, dispose: () => label.texture.dispose() };
  }, [text, palette]);
  return (
    <ScreenLabel
      label={made.label}
      at={port.seatPoint}
      foot={[-0.06, 0.5]}
      order={20}
      {...(onPick === undefined ? {} : { onClick: () => onPick(port.id) })}
    />
  );
}

import { ClockDial, type ClockHand, DIAL_SIZE } from './ClockDial.tsx';

interface ClockFaceProps {
  readonly hands: readonly ClockHand[];
  readonly caption: string;
  readonly words: string;
}

/** A clock face with named hands; the words say the same to those who do not see it. */
export function ClockFace({ hands, caption, words }: ClockFaceProps) {
  return (
    <figure className="clock">
      <svg viewBox={`0 0 ${DIAL_SIZE} ${DIAL_SIZE}`} role="img" aria-label={words}>
        <ClockDial hands={hands} />
      </svg>
      <figcaption>{caption}</figcaption>
    </figure>
  );
}

import type { PartKind } from '../../../shared/document/parts/columns.ts';
import { PART_KIND_WORDS } from '../../../shared/document/wording/partWords.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';

/** What a kind of part is for and how its first one gets in. */
const TEACH: Readonly<Record<PartKind, readonly string[]>> = {
  hoses: [
    'A hose is what the search bends: its outside diameter keeps it clear of things, its least bend radius shapes every way it may take.',
    'Read the layline on yours and its maker’s sheet. Measure the outside diameter with a caliper. State whether the radius is to the inside of the bend or to the centreline: the two differ by half the hose.',
  ],
  ends: [
    'An end says how far the cut lies from the seat (C) and how far the seat stands off the hose (drop). A millimetre wrong here is a millimetre wrong on every hose that has it.',
    'Begin a new one and measure it: a caliper, a square and a flat plate are enough.',
  ],
  sleeves: [
    'A sleeve makes the hose thicker where it lies, keeps heat off it, and never raises what the hose itself stands.',
    'Slide yours over the hose before you measure its outside.',
  ],
  adapters: [
    'An adapter goes between a port and a hose end: a boss to a flare, an elbow, a banjo, a bulkhead, a tee. It moves the place the hose starts from.',
    'Measure from the face that seals in the part to the seat it offers, screwed in tight.',
  ],
  clamps: [
    'A clamp holds the hose at a height over what it is fixed to. With its sizes here the program can say which clamp goes where.',
    'Measure from the mounting face to the middle of the hose it holds.',
  ],
  rolls: [
    'A roll is hose you have: which hose, how much is left, when it was cured. Rubber ages on the shelf too.',
    'Hoses to be cut can then be laid out on what is there.',
  ],
};

/** A compartment with nothing chosen: what would lie here, and how the first one gets in. */
export function EmptyKind({ kind, count }: { kind: PartKind; count: number }) {
  const { onParts } = useBench();
  const { one, many } = PART_KIND_WORDS[kind];
  return (
    <article className="slip part-card part-empty" aria-label={`About ${many}`}>
      <h2>{count === 0 ? `No ${one} in the drawer yet` : `Choose ${/^[aeiou]/.test(one) ? 'an' : 'a'} ${one}`}</h2>
      {TEACH[kind].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <div className="support-buttons">
        <Button look="main" onPress={onParts.startNew}>
          New {one}
        </Button>
        <Button onPress={() => void onParts.bringIn()}>Bring in a CSV</Button>
      </div>
      <p className="teach">
        A CSV has one heading row with the program’s own column names. Write out a table to see them, or run hosewright
        schema part-tables.
      </p>
    </article>
  );
}

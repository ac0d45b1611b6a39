import { FLARE_SIZES } from '../../../shared/document/parts/published/flareSizes.ts';
import { proposedCutOffs } from '../../../shared/document/parts/published/proposedCutOffs.ts';
import { lengthText } from '../../../shared/document/parts/readLength.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { useLengthText } from '../useLengthText.ts';

interface Asked {
  readonly seat: string;
  readonly dash: number;
  readonly bendAngleDeg: number;
  readonly form?: 'nut' | 'flange';
  /** whether the card has a source already, which is then left alone */
  readonly hasSource: boolean;
}

/** Figures published for ends of this size and bend, of other fittings: to compare with, and a C to start from. */
export function PublishedNotes({ values }: { values: Readonly<Record<string, unknown>> }) {
  const asked = askedOf(values);
  if (asked === undefined) return null;
  const offers = proposedCutOffs(asked);
  const size = asked.seat === 'flare-37' ? FLARE_SIZES.find(({ dash }) => dash === asked.dash) : undefined;
  if (offers.length === 0 && size === undefined) return null;
  return (
    <details className="published">
      <summary>Published for this size: compare, then measure yours</summary>
      <ul>
        {offers.map((offer) => (
          <li key={`${offer.published.table} ${offer.published.fitting}`}>
            <span>{offer.words}</span>
            {offer.cutOffMm !== undefined && <TakeCutOff mm={offer.cutOffMm} words={offer.words} asked={asked} />}
          </li>
        ))}
        {size !== undefined && (
          <li>
            <span>
              37° flare -{size.dash}: thread {size.thread}
              {size.nutHexIn !== undefined && `, nut ${size.nutHexIn} in across flats`}. {size.threadSource}
              {size.nutHexSource !== undefined && `; hex: ${size.nutHexSource}`}.
            </span>
          </li>
        )}
      </ul>
    </details>
  );
}

function TakeCutOff({ mm, words, asked }: { mm: number; words: string; asked: Asked }) {
  const { onParts } = useBench();
  const text = useLengthText();
  const take = (): void =>
    onParts.fill({
      cutOffMm: lengthText(mm, 'mm'),
      seatToBendMm: '',
      bendToShoulderMm: '',
      ...(asked.hasSource
        ? {}
        : { source: `C: ${words.replace(' Published for that fitting: measure yours.', '')} Not measured` }),
    });
  return (
    <Button onPress={take} hint="Its lengths then follow from C">
      Start from C {text(mm, 'nearest')}
    </Button>
  );
}

function askedOf(values: Readonly<Record<string, unknown>>): Asked | undefined {
  const { seat, dash, bendAngleDeg, form = 'nut', source } = values;
  if (typeof seat !== 'string' || typeof dash !== 'number' || typeof bendAngleDeg !== 'number') return undefined;
  if (form !== 'nut' && form !== 'flange') return undefined;
  return { seat, dash, bendAngleDeg, form, hasSource: source !== undefined };
}

import { useId, useState } from 'react';
import type { MeasureCheck, MeasuredEnd, MeasuredRow } from '../../../shared/document/parts/measure/measureEnd.ts';
import {
  MEASURE_KINDS,
  type MeasureKind,
  READINGS,
  type Reading,
} from '../../../shared/document/parts/measure/readings.ts';
import { formatDegrees } from '../../../shared/sheets/format/index.ts';
import { draftValues, type LengthUnit, type PartDraft } from '../../state/parts/draftPart.ts';
import { measureKindOf, measureTyped, readingProblem, readingTexts } from '../../state/parts/measuring.ts';
import { useBench, useDrawer, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Shape } from '../../widgets/Shape.tsx';
import { Length } from '../Length.tsx';
import { useLengthText } from '../useLengthText.ts';
import { BanjoDrawing } from './drawings/BanjoDrawing.tsx';
import { DrawnReadingsContext } from './drawings/Dimension.tsx';
import { ElbowDrawing } from './drawings/ElbowDrawing.tsx';
import { FlangeDrawing } from './drawings/FlangeDrawing.tsx';
import { HalfTurnDrawing } from './drawings/HalfTurnDrawing.tsx';
import { StraightDrawing } from './drawings/StraightDrawing.tsx';

const KIND_WORDS: Readonly<Record<MeasureKind, string>> = {
  straight: 'Straight',
  elbow: 'Elbow',
  'half-turn': 'Half turn, 180°',
  banjo: 'Banjo',
  flange: 'Flange, 90°',
};

const DRAWINGS: Readonly<Record<MeasureKind, React.ComponentType>> = {
  straight: StraightDrawing,
  elbow: ElbowDrawing,
  'half-turn': HalfTurnDrawing,
  banjo: BanjoDrawing,
  flange: FlangeDrawing,
};

const HEIGHT = 304;
/** Where a drawing begins, so that none has an empty head. */
const TOP: Readonly<Record<MeasureKind, number>> = { straight: 0, elbow: 62, 'half-turn': 8, banjo: 4, flange: 4 };

/** How each kind is laid down to be read. */
const HOW: Readonly<Record<MeasureKind, string>> = {
  straight:
    'Push the nut back, off the nose. Loose: the two readings of the lower picture. Assembled or crimped: the two of the upper one. Both, and they check each other.',
  elbow:
    'Lay the tail flat on a plate, the rim up. Push the nut back. Hold a square on the plate against the tip of the tail and measure along; then heights over the plate.',
  'half-turn': 'Lay both legs flat on a plate. Hold a square against the crown of the bend and measure along the legs.',
  banjo:
    'Without bolt and washers. The neck lies square to the bolt; where it is bent besides, measure it as an elbow.',
  flange:
    'The face flat on a plate, O-ring out. A straight flange is measured as a straight end; one of another bend as an elbow, the edge of its face as the rim.',
};

/** Readings of a caliper and a square become C, drop and lengths, and say whether they hold together. */
export function MeasurePage({ draft }: { draft: PartDraft }) {
  const { drawer, onParts } = useBench();
  const { values } = draftValues(draft);
  const [kind, setKind] = useState<MeasureKind>(() => measureKindOf(values));
  const [active, setActive] = useState<string | null>(null);
  const typed = useDrawer((state) => state.readings);
  const unit: LengthUnit = useSession((session) => session.units) === 'mm' ? 'mm' : 'in';
  const texts = readingTexts(typed, draft, kind, values);
  const measured = measureTyped(kind, texts);
  const Drawing = DRAWINGS[kind];
  const back = (): void => drawer.set({ measuring: false });
  return (
    <article className="slip part-card measure" aria-labelledby="measure-title">
      <header className="slip-head">
        <h2 id="measure-title">Measure it yourself</h2>
        <Button onPress={back}>Back to the card</Button>
      </header>
      <fieldset className="measure-kinds">
        <legend>What kind of end it is</legend>
        {MEASURE_KINDS.map((one) => (
          <label key={one} className="measure-kind">
            <input type="radio" name="measure-kind" checked={one === kind} onChange={() => setKind(one)} />
            <span>{KIND_WORDS[one]}</span>
          </label>
        ))}
      </fieldset>
      <p>{HOW[kind]}</p>
      <DrawnReadingsContext value={{ kind, active, again: measured.again }}>
        <svg
          className="measure-drawing"
          viewBox={`0 ${TOP[kind]} 540 ${HEIGHT - TOP[kind]}`}
          role="img"
          aria-label={`${KIND_WORDS[kind]} end with the places of its readings`}
        >
          <Drawing />
        </svg>
      </DrawnReadingsContext>
      <div className="readings">
        {READINGS[kind].map((reading) => (
          <ReadingField
            key={`${kind} ${reading.key}`}
            reading={reading}
            text={texts[reading.key]?.text ?? ''}
            unit={texts[reading.key]?.unit ?? unit}
            problem={readingProblem(reading, texts[reading.key])}
            again={measured.again.includes(reading.key)}
            onActive={setActive}
            onType={(text) => onParts.takeReading(draft, kind, reading.key, { text, unit })}
          />
        ))}
      </div>
      <Outcome kind={kind} measured={measured} />
      <footer className="support-buttons">
        <Button
          look="main"
          disabled={measured.end === undefined}
          onPress={() => {
            onParts.fillMeasured(measured, kind, texts);
            back();
          }}
        >
          Write it on the card
        </Button>
      </footer>
    </article>
  );
}

interface ReadingFieldProps {
  readonly reading: Reading;
  readonly text: string;
  readonly unit: LengthUnit;
  readonly problem: string | undefined;
  readonly again: boolean;
  readonly onActive: (key: string | null) => void;
  readonly onType: (text: string) => void;
}

function ReadingField({ reading, text, unit, problem, again, onActive, onType }: ReadingFieldProps) {
  const id = useId();
  const { letter, words, need } = reading;
  return (
    <div className={`reading${again ? ' reading-again' : ''}`}>
      <span className="reading-letter" aria-hidden="true">
        {letter}
      </span>
      <label htmlFor={id}>
        {words}
        {need === 'check' && <span className="field-unit"> (to check)</span>}
      </label>
      <div className="reading-input">
        <input
          id={id}
          className="text-input figure part-number"
          autoComplete="off"
          value={text}
          aria-invalid={problem !== undefined}
          aria-describedby={problem === undefined && !again ? undefined : `${id}-says`}
          onFocus={() => onActive(reading.key)}
          onBlur={() => onActive(null)}
          onChange={(event) => onType(event.target.value)}
        />
        <span className="number-unit">{reading.unit === 'deg' ? '°' : unit}</span>
      </div>
      {(problem !== undefined || again) && (
        <p className="field-wrong" id={`${id}-says`}>
          {problem ?? 'Take this one again.'}
        </p>
      )}
    </div>
  );
}

function Outcome({ kind, measured }: { kind: MeasureKind; measured: MeasuredEnd }) {
  const { end, missing, checks, again } = measured;
  const letters = (keys: readonly string[]): string =>
    READINGS[kind]
      .filter(({ key }) => keys.includes(key))
      .map(({ letter }) => letter)
      .join(', ');
  return (
    <section className="measure-outcome" aria-label="What it comes to" aria-live="polite">
      {end === undefined ? (
        <p className="teach">
          Still to be read: {letters(missing)}.{kind === 'straight' && ' Or M and I, assembled.'}
        </p>
      ) : (
        <MeasuredFigures end={end} />
      )}
      {checks.length > 0 && (
        <ul className="measure-checks">
          {checks.map((check) => (
            <CheckLine key={`${check.what} ${check.from.join(' ')}`} check={check} />
          ))}
        </ul>
      )}
      {again.length > 0 && (
        <p className="measure-again">
          Take again: {letters(again)}. {again.length > 1 && 'A slip in one of them is enough to explain it.'}
        </p>
      )}
      {end !== undefined && checks.length === 0 && (
        <p className="teach">Nothing was read a second way, so nothing is checked. The readings “to check” do that.</p>
      )}
    </section>
  );
}

function MeasuredFigures({ end }: { end: MeasuredRow }) {
  const rows: readonly (readonly [string, number | undefined])[] = [
    ['C, seat to shoulder along the hose', end.cutOffMm],
    ['Drop, seat off the axis of the hose', end.dropMm],
    ['Seat to bend', end.bendAngleDeg === 0 ? undefined : end.seatToBendMm],
    ['Bend to shoulder', end.bendAngleDeg === 0 ? undefined : end.bendToShoulderMm],
  ];
  return (
    <dl className="values measure-figures">
      {rows.map(
        ([words, mm]) =>
          mm !== undefined && (
            <div key={words}>
              <dt>{words}</dt>
              <dd>
                <Length mm={mm} denominator={32} both />
              </dd>
            </div>
          ),
      )}
    </dl>
  );
}

function CheckLine({ check }: { check: MeasureCheck }) {
  const lengthText = useLengthText();
  const { unit, from, figures, agrees } = check;
  const text = (figure: number): string => (unit === 'deg' ? formatDegrees(figure) : lengthText(figure, 'nearest'));
  return (
    <li className={agrees ? 'check-held' : 'check-failed'}>
      <Shape kind={agrees ? 'tick' : 'octagon'} size={18} />
      <span>
        <b>{CHECK_WORDS[check.what]}</b> {agrees ? 'holds' : 'does not hold'}: {from[0]} {text(figures[0])}, {from[1]}{' '}
        {text(figures[1])}
      </span>
    </li>
  );
}

const CHECK_WORDS: Readonly<Record<MeasureCheck['what'], string>> = {
  C: 'C',
  drop: 'Drop',
  bend: 'Bend',
  rim: 'Rim',
  legs: 'Legs',
  sense: 'Sense',
};

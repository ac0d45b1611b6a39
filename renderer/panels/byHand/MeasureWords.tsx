import { useState } from 'react';
import { useStore } from 'zustand';
import type { Aim } from '../../state/handStore.ts';
import { type MeasuredPlace, measured } from '../../state/onMeasure.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Length } from '../Length.tsx';
import { LengthField } from '../LengthField.tsx';

/** Between which two places is measured, what it comes to, and a scale set by a length that is known. */
export function MeasureWords({ aim }: { aim: Aim | null }) {
  const state = useStore(useBench().onMeasure);
  const result = measured(state);
  if (result === null)
    return (
      <>
        {state.from === null ? 'From: ' : `From ${placeWords(state.from)} to: `}
        {aim === null ? 'point at the bay' : aim.rim ? `middle of the round rim of ${aim.part}` : aim.part}
      </>
    );
  const [x, y, z] = result.alongMm;
  return (
    <>
      <b>
        <Length mm={result.straightMm} denominator={32} both />
      </b>{' '}
      from {placeWords(state.from)} to {placeWords(state.to)}; along x <Length mm={x} />, y <Length mm={y} />, z{' '}
      <Length mm={z} />
      <TrueLength measuredMm={result.straightMm} key={result.straightMm} />
    </>
  );
}

function placeWords(place: MeasuredPlace | null): string {
  if (place === null) return '';
  return place.rimRadiusMm === undefined ? place.part : `the middle of the rim of ${place.part}`;
}

/** mm. A shorter length says too little of a scale: half a millimetre is more than a percent of it. */
const LEAST_KNOWN_MM = 50;
/** Of a scale. A length further off than this is no scan of it; the unit is wrong, or the places are. */
const MOST_OFF = 0.2;

function TrueLength({ measuredMm }: { measuredMm: number }) {
  const { onSquareUp } = useBench();
  const [trueMm, setTrueMm] = useState(measuredMm);
  if (measuredMm < LEAST_KNOWN_MM) return null;
  const off = measuredMm / trueMm - 1;
  return (
    <span className="true-length">
      <LengthField
        label="In truth it is"
        mm={trueMm}
        lowMm={measuredMm * (1 - MOST_OFF)}
        highMm={measuredMm * (1 + MOST_OFF)}
        onSet={setTrueMm}
      />
      {trueMm !== measuredMm && (
        <>
          <span>
            The scan measures {Math.abs(off * 100).toFixed(2)} % {off > 0 ? 'long' : 'short'}.
          </span>
          <Button onPress={() => onSquareUp.rescale(measuredMm, trueMm)}>Set the scale by it</Button>
        </>
      )}
    </span>
  );
}

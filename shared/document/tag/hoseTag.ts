import { type Dated, madeOn } from '../life/madeOn.ts';
import type { Hose } from '../parts/schema.ts';
import type { Run } from '../project/schema.ts';
import { pressureText } from '../wording/quantityText.ts';

/** One line of a tag; without a value it is written in at the bench. */
export interface TagLine {
  readonly label: string;
  readonly value?: string;
}

/** Whose fields these are. */
export const TAG_SOURCE =
  'NAVEDTRA 14018 p. 210 (commercially made assemblies) and US Army TM 1-1500-204-23-2: assembly and dash, operating pressure, proof and its date, hose, cure date, operator';

interface Tagged extends Dated {
  readonly run: Run;
  readonly hose: Pick<Hose, 'name' | 'dash'>;
}

/**
 * What stands on the tag of a finished hose, from its project and what the bench wrote down: which hose and which end is which, what it
 * works at, its proof test with the day, how old it is. What nobody wrote down yet stays open for the pen.
 */
export function hoseTag(tagged: Tagged): readonly TagLine[] {
  const { run, hose } = tagged;
  const { proof, fittedOn } = run.asBuilt ?? {};
  return [
    { label: 'Hose', value: `${run.id} (${run.name}), -${hose.dash}` },
    { label: 'END A', value: run.a.port },
    { label: 'END B', value: run.b.port },
    { label: 'Made of', value: hose.name },
    { label: 'Works at', value: pressureText(run.service.pressureKpa) },
    line('Proof', proof === undefined || proof.failed === true ? undefined : pressureText(proof.pressureKpa)),
    line('Tested on', proof?.failed === true ? undefined : proof?.on),
    line('Hose cured', madeOn(tagged)?.day),
    line('Fitted on', fittedOn),
    { label: 'By' },
  ];
}

function line(label: string, value: string | undefined): TagLine {
  return value === undefined ? { label } : { label, value };
}

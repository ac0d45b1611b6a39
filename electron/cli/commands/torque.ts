import { bad, good, type Problem, type Result } from '../../../shared/base/result.ts';
import { END_MATERIALS, type EndMaterial } from '../../../shared/document/parts/schema.ts';
import { type NutAdvice, nutTorque } from '../../../shared/document/torque/nutTorque.ts';
import { formatFlats, formatTorque } from '../../../shared/sheets/format/index.ts';
import { defineCommand } from '../command.ts';
import type { CommandHost } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';

interface TorqueOptions {
  readonly dash: number;
  readonly seat: string;
  readonly material: EndMaterial;
  readonly on?: EndMaterial;
  readonly json: boolean;
}

const SEAT = 'flare-37';

/** `hosewright torque`: the torque of a hose end's nut by every published table that fits, never one number alone. */
export const torqueCommand = defineCommand({
  name: 'torque',
  usage: [
    [
      'torque DASH MATERIAL [--on MATERIAL] [--seat SEAT] [--json]',
      "torque of a hose end's nut by every published table that fits, each by name, and its",
      `flats; --on: metal it is screwed on; --seat: ${SEAT} where it is left out`,
    ],
  ],
  options: { on: { type: 'string' }, seat: { type: 'string' }, json: { type: 'boolean' } },
  words: [2, 2],
  wordsAre: "a dash size and the end's metal, such as 8 steel",
  read: readTorque,
  run: tellTorque,
});

function readTorque(
  [size = '', metal = '']: readonly string[],
  values: { readonly on?: string; readonly seat?: string; readonly json?: boolean },
): Result<TorqueOptions> {
  const dash = Number(size.replace(/^-/, ''));
  const material = metalNamed(metal);
  const on = values.on === undefined ? undefined : metalNamed(values.on);
  const problems: Problem[] = [
    ...(Number.isInteger(dash) && dash > 0 ? [] : [wrong('DASH', 'expected a dash size such as 8', size)]),
    ...(material === undefined ? [wrong('MATERIAL', METALS, metal)] : []),
    ...(values.on !== undefined && on === undefined ? [wrong('--on', METALS, values.on)] : []),
  ];
  if (problems.length > 0 || material === undefined) return bad(problems);
  const seat = values.seat ?? SEAT;
  return good({ dash, seat, material, json: values.json === true, ...(on === undefined ? {} : { on }) });
}

const METALS = `expected one of ${END_MATERIALS.join(', ')}`;

function metalNamed(text: string): EndMaterial | undefined {
  return END_MATERIALS.find((material) => material === text);
}

function wrong(path: string, message: string, got: string): Problem {
  return { path, message, got: JSON.stringify(got) };
}

function tellTorque({ dash, seat, material, on, json }: TorqueOptions, host: CommandHost): ExitCode {
  const advice = nutTorque({ seat, dash, material }, on);
  if (json)
    host.out(`${JSON.stringify({ dash, seat, material, ...(on === undefined ? {} : { on }), ...advice }, null, 2)}\n`);
  else host.out(`${adviceLines(advice).join('\n')}\n`);
  return EXIT.clean;
}

function adviceLines({ torques, flats, note }: NutAdvice): string[] {
  return [
    ...torques.flatMap(({ table, leastNm, mostNm }) => [
      `${formatTorque(leastNm, mostNm)}  ${table.name}${table.lubricated ? ', lubricated' : ''}`,
      `  ${table.source}`,
    ]),
    ...(flats === undefined
      ? []
      : [`${formatFlats(flats.least, flats.most)} flats  ${flats.name}`, `  ${flats.source}`]),
    ...(torques.length === 0 && note === undefined ? ['No table has this size.'] : []),
    ...(note === undefined ? [] : [note]),
    "Published sets differ: the figure of the end's own maker comes first. Two wrenches, the hose held.",
  ];
}

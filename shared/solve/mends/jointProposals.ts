import { insertionDepthMm } from '../../document/parts/insertionDepth.ts';
import type { End } from '../../document/parts/schema.ts';
import type { HoseClamps } from '../../document/project/schema.ts';
import { ruleById } from '../../document/rules/index.ts';
import { JOINT_WORDS } from '../../document/wording/partWords.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import { SIDES, type Side, sideText } from '../checks/places.ts';
import { SAME_ANGLE_DEG } from './endProposals.ts';
import { otherHoses } from './partProposals.ts';
import type { MendContext, Proposal } from './proposal.ts';

/** Joints that a hose may hang on where its loss burns something. */
const FAST: readonly End['joint'][] = ['crimp', 'screw-together'];

/** Rules of joints that may not be there at all. */
const BARRED = ['hose-clamps-on-ptfe', 'hose-clamps-lifeline', 'push-on-lifeline', 'push-on-ptfe'];

/** Crimped or screwed ends of the same angle in the place of all that are pushed on or clamped, for findings that bar those. */
export function fastJoints({ run, tables, finding }: MendContext): Proposal[] {
  if (!BARRED.includes(finding.rule)) return [];
  const loose = SIDES.filter((side) => !FAST.includes(run[side].end.joint));
  const found = loose.flatMap((side) => {
    const end = fastEnd(run[side], tables.ends);
    return end === undefined ? [] : [{ side, end }];
  });
  const [first, second] = found;
  if (first === undefined || found.length < loose.length) return [];
  return [
    {
      edit:
        second === undefined
          ? { kind: 'end', side: first.side, end: first.end.id }
          : { kind: 'ends', a: first.end.id, b: second.end.id },
      words: found
        .map(({ side, end }) => `${JOINT_WORDS[end.joint].toLowerCase()} end at ${sideText(side)}`)
        .map((words, i) => (i === 0 ? words.charAt(0).toUpperCase() + words.slice(1) : words))
        .join(' and '),
      how: 'anew',
      change: second === undefined ? 4 : 6,
      toGet: found.map(({ end }) => `${end.name} (${end.id})`),
    },
  ];
}

function fastEnd({ end: now, port }: MendContext['run']['a'], ends: readonly End[]): End | undefined {
  return ends
    .filter(({ dash, seat, joint }) => dash === now.dash && seat === port.seat && FAST.includes(joint))
    .filter(({ bendAngleDeg }) => Math.abs(bendAngleDeg - now.bendAngleDeg) < SAME_ANGLE_DEG)
    .toSorted((p, q) => Number(p.material !== now.material) - Number(q.material !== now.material))[0];
}

/** Other hoses of the size, where the one at hand may not go under hose clamps. */
export function hosesForClamps(context: MendContext): Proposal[] {
  return context.finding.rule === 'hose-clamps-on-ptfe' ? otherHoses(context) : [];
}

/** All hose clamps of which is stated how they sit put right: as many as are asked for, with a screw, hose enough beyond them, the barb under them where it is long enough. */
export function clampsRight(context: MendContext): Proposal[] {
  const right = SIDES.flatMap((side) => {
    const stated = context.run.run[side].hoseClamps;
    const clamps = stated === undefined ? undefined : asTheyShould(context, side, stated);
    return stated === undefined || clamps === undefined ? [] : [{ side, stated, clamps }];
  });
  const [first] = right;
  if (first === undefined) return [];
  return [
    {
      edit: { kind: 'hose-clamps', ...Object.fromEntries(right.map(({ side, clamps }) => [side, clamps])) },
      words: `${clampWords(first.clamps)} at ${right.map(({ side }) => sideText(side)).join(' and ')}`,
      how: 'near',
      change: 1,
      toGet: right.flatMap(({ side, stated, clamps }) =>
        clamps.count > stated.count || stated.spring !== clamps.spring || stated.bandMm !== clamps.bandMm
          ? [`hose clamps at ${sideText(side)}`]
          : [],
      ),
    },
  ];
}

function clampWords({ count, fromHoseEndMm, bandMm, spring = false }: HoseClamps): string {
  const bands = bandMm === undefined ? '' : ` and bands of ${lengthText(bandMm)}`;
  const what = `${count === 1 ? 'The hose clamp' : `${count} hose clamps`}${spring ? '' : ` with a screw${bands}`}`;
  return fromHoseEndMm === undefined
    ? what
    : `${what}, the nearest ${lengthText(fromHoseEndMm)} from the end of the hose,`;
}

/** The hose clamps of an end as they should sit; undefined where they do. */
function asTheyShould(context: MendContext, side: Side, stated: HoseClamps): HoseClamps | undefined {
  const { run, finding } = context;
  if (run[side].end.joint !== 'clamped') return undefined;
  const two = finding.rule === 'filler-hose-clamps' || run.run.service.purpose === 'wet-exhaust';
  const least = two
    ? limitOf(context, finding.rule === 'filler-hose-clamps' ? finding.rule : 'exhaust-hose-clamps')
    : 1;
  const count = Math.max(stated.count, least);
  const from = fromEndMm(context, side, { ...stated, count });
  const { spring, ...screwed } = stated;
  const kept = spring === undefined || finding.rule === 'hose-clamps-spring' ? screwed : stated;
  const right = {
    ...kept,
    count,
    ...(from === undefined ? {} : { fromHoseEndMm: from }),
    ...(finding.rule === 'filler-clamp-band' ? { bandMm: finding.limit } : {}),
  };
  return JSON.stringify(right) === JSON.stringify(stated) ? undefined : right;
}

/** As far from the end of the hose as is stated, no nearer than is asked for, and no further than the barb has room; undefined where it is not stated. */
function fromEndMm(
  context: MendContext,
  side: Side,
  { count, fromHoseEndMm, bandMm = 0 }: HoseClamps,
): number | undefined {
  if (fromHoseEndMm === undefined) return undefined;
  // Rounded up to what a rule reads, so that the words keep the limit too.
  const least = Math.ceil(limitOf(context, 'hose-clamp-from-end') * 10) / 10;
  const apartMm = (count - 1) * limitOf(context, 'hose-clamps-apart');
  const roomMm = insertionDepthMm(context.run[side].end) - count * bandMm - apartMm;
  return Math.max(least, Math.min(fromHoseEndMm, roomMm));
}

/** The limit of a rule: as the finding has it where it is of that rule, else the pack's. */
function limitOf({ finding }: MendContext, rule: string): number {
  return finding.rule === rule ? finding.limit : (ruleById(rule)?.value ?? 0);
}

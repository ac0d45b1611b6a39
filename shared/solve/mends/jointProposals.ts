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

/** All hose clamps whose place is stated put right: as many as are asked for, hose enough beyond them, the barb under them where it is long enough. */
export function clampsRight(context: MendContext): Proposal[] {
  const right = SIDES.flatMap((side) => {
    const clamps = clampsAt(context, side);
    return clamps === undefined ? [] : [{ side, clamps }];
  });
  const [first] = right;
  if (first === undefined) return [];
  const { count, fromHoseEndMm } = first.clamps;
  const from =
    fromHoseEndMm === undefined ? '' : `, the nearest ${lengthText(fromHoseEndMm)} from the end of the hose,`;
  return [
    {
      edit: { kind: 'hose-clamps', ...Object.fromEntries(right.map(({ side, clamps }) => [side, clamps])) },
      words: `${count === 1 ? 'The hose clamp' : `${count} hose clamps`}${from} at ${right.map(({ side }) => sideText(side)).join(' and ')}`,
      how: 'near',
      change: 1,
      toGet: right.flatMap(({ side, clamps }) =>
        clamps.count > (context.run.run[side].hoseClamps?.count ?? 0) ? [`a hose clamp at ${sideText(side)}`] : [],
      ),
    },
  ];
}

/** The hose clamps of an end as they should sit; undefined where they do, or where nothing is stated of them. */
function clampsAt(context: MendContext, side: Side): HoseClamps | undefined {
  const { run } = context;
  const stated = run.run[side].hoseClamps;
  if (run[side].end.joint !== 'clamped' || stated === undefined) return undefined;
  // Rounded up to what a rule reads, so that the words keep the limit too.
  const least = Math.ceil(limitOf(context, 'hose-clamp-from-end') * 10) / 10;
  const wanted = run.run.service.purpose === 'wet-exhaust' ? limitOf(context, 'exhaust-hose-clamps') : 1;
  const count = Math.max(stated.count, wanted);
  const { bandMm = 0, fromHoseEndMm } = stated;
  const roomMm = insertionDepthMm(run[side].end) - count * bandMm - (count - 1) * limitOf(context, 'hose-clamps-apart');
  const from = fromHoseEndMm === undefined ? undefined : Math.max(least, Math.min(fromHoseEndMm, roomMm));
  if (count === stated.count && from === fromHoseEndMm) return undefined;
  return { ...stated, count, ...(from === undefined ? {} : { fromHoseEndMm: from }) };
}

/** The limit of a rule: as the finding has it where it is of that rule, else the pack's. */
function limitOf({ finding }: MendContext, rule: string): number {
  return finding.rule === rule ? finding.limit : (ruleById(rule)?.value ?? 0);
}

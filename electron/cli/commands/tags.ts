import { good } from '../../../shared/base/result.ts';
import { clampedEnds } from '../../../shared/document/assembly/hoseClampSteps.ts';
import type { ResolvedRun } from '../../../shared/document/project/resolve.ts';
import { type ProofTest, proofChoices } from '../../../shared/document/proof/proofTest.ts';
import { hoseTag, TAG_SOURCE, type TagLine } from '../../../shared/document/tag/hoseTag.ts';
import { pressureText } from '../../../shared/document/wording/quantityText.ts';
import { readProject } from '../../../shared/jobs/readProject.ts';
import { readProjectFiles } from '../../node/readProjectFiles.ts';
import { defineCommand } from '../command.ts';
import { type CommandHost, reportProblems } from '../commandHost.ts';
import { EXIT, type ExitCode } from '../exitCodes.ts';
import { inColumns } from '../inColumns.ts';

interface TagsOptions {
  readonly project: string;
  readonly json: boolean;
}

/** `hosewright tags`: what stands on the tag of every hose, and the proof tests there are to choose from. */
export const tagsCommand = defineCommand({
  name: 'tags',
  usage: [
    [
      'tags   PROJECT [--json]',
      'the tag of every hose with its END A and END B, what is still to be written on it, and its proof tests to choose from',
    ],
  ],
  options: { json: { type: 'boolean' } },
  words: [1, 1],
  read: ([project = ''], { json }) => good({ project, json: json === true }),
  run: runTags,
});

interface Tag {
  readonly run: string;
  readonly lines: readonly TagLine[];
  /** none where the bench already wrote its proof test down, or hose clamps hold the hose */
  readonly proofTests: readonly ProofTest[];
}

async function runTags({ project, json }: TagsOptions, host: CommandHost): Promise<ExitCode> {
  const files = await readProjectFiles(project);
  if (!files.ok) return reportProblems(host, files.problems);
  const read = readProject(files.value);
  if (!read.ok) return reportProblems(host, read.problems);
  const tags = read.value.resolved.runs.map(tagOf);
  host.out(json ? `${JSON.stringify({ tags, source: TAG_SOURCE }, null, 2)}\n` : tagsText(tags));
  return EXIT.clean;
}

function tagOf(resolved: ResolvedRun): Tag {
  const isAsked = resolved.run.asBuilt?.proof === undefined && clampedEnds(resolved).length === 0;
  return { run: resolved.run.id, lines: hoseTag(resolved), proofTests: isAsked ? proofChoices(resolved) : [] };
}

function tagsText(tags: readonly Tag[]): string {
  const blocks = tags.map(({ lines, proofTests }) => [
    ...inColumns(lines.map(({ label, value }) => [label, value ?? '______'])),
    ...proofTests.map((test, i) => `${i === 0 ? 'Proof test' : 'or'} ${testWords(test)}`),
  ]);
  const sources = [...new Set(tags.flatMap(({ proofTests }) => proofTests.map(({ source }) => source)))];
  return `${[
    ...blocks.flatMap((block) => [...block, '']),
    ...(sources.length === 0 ? [] : [`Proof tests, with liquid: ${sources.join('; ')}. ${PROOF_CAUTION}`]),
    `Tags: ${TAG_SOURCE}.`,
  ].join('\n')}\n`;
}

const PROOF_CAUTION =
  'A hose under test can burst or let go of its end: bleed the air out, stand behind a screen, and go by what the makers of hose and ends say.';

function testWords({ pressureKpa, holdFromS, holdToS, multiple, byMaker, weakest, unrated }: ProofTest): string {
  const held = holdFromS === holdToS ? `${holdToS} s` : `${holdFromS} to ${holdToS} s`;
  const why = byMaker ? 'as the maker of the hose states' : `${multiple} x what ${weakest.part} bears`;
  const doubt =
    unrated.length === 0 ? '' : ` (no rating known of ${unrated.join(' and ')}: it may be too much for them)`;
  return `${pressureText(pressureKpa)}, held ${held}: ${why}${doubt}`;
}

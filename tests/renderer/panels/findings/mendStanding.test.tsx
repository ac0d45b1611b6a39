import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { MendRow } from '../../../../renderer/panels/findings/MendRow.tsx';
import { NearMends } from '../../../../renderer/panels/findings/NearMends.tsx';
import { BenchContext } from '../../../../renderer/state/useBench.ts';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import type { MendAnswer, NearMend } from '../../../../shared/document/mends/schema.ts';
import { sampleBench, sampleFinding, sampleLay } from '../../sampleBench.ts';

const to = (id: string): Pick<Finding, 'with'> => ({ with: { kind: 'skin', id } });
const STAYS = sampleFinding('feed', { check: 'clearance', ...to('tub'), message: 'near the tub' });
const GRAVER = sampleFinding('feed', {
  check: 'clearance',
  ...to('manifold'),
  message: 'near the manifold',
  margin: -1,
});
const AIM = sampleFinding('feed', { severity: 'stop', message: 'bent too far' });
const BEFORE = [STAYS, GRAVER, AIM];

const BROUGHT = [
  { ...GRAVER, margin: -9, message: 'nearer the manifold' },
  sampleFinding('drain', { message: 'another hose is bent' }),
];
const MEND = {
  id: 'm',
  run: 'feed',
  edit: { kind: 'end', side: 'b', end: 'straight' },
  words: 'A straight end',
} as const;
const NEAR: NearMend = { mend: MEND, words: '', cures: [], brings: BROUGHT, left: [STAYS, ...BROUGHT], toGet: [] };
const ANSWER: MendAnswer = {
  mend: MEND,
  words: '',
  how: 'anew',
  lay: sampleLay('feed'),
  towards: [],
  findings: [],
  cured: [{ finding: AIM, words: 'cures: bend radius' }],
  left: [STAYS, ...BROUGHT],
  stopsLeft: 0,
  looksLeft: 3,
  brings: BROUGHT,
  newNotes: [],
  change: 4,
  longerMm: 12,
  toGet: [],
};

const SAID = ['nearer the manifold: worse than before', 'another hose is bent: new', 'near the tub: as before'];

function said(list: ReactNode): string[] {
  const { bench } = sampleBench({});
  const html = renderToStaticMarkup(<BenchContext value={bench}>{list}</BenchContext>);
  return [...html.matchAll(/Decide first, ([a-z ]+):<\/b> ([a-z ]+)</g)].map(([, how, what]) => `${what}: ${how}`);
}

test('what an answer makes worse is not called new, and what it leaves is as before', () => {
  expect(said(<MendRow answer={structuredClone(ANSWER)} before={BEFORE} number={0} mayMake />)).toEqual(SAID);
});

test('so is what keeps a change from being an answer', () => {
  const mends = { aimedAt: [AIM], answers: [] };
  expect(said(<NearMends mends={mends} nearest={[structuredClone(NEAR)]} before={BEFORE} />)).toEqual(SAID);
});

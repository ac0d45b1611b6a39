import { clampedEnds } from '../../document/assembly/hoseClampSteps.ts';
import { FUELS } from '../../document/parts/fluids.ts';
import { type Block, stack } from '../layout/block.ts';
import { TYPE } from '../layout/style.ts';
import { heading, textBlock } from '../layout/textBlock.ts';
import type { Subject } from './subject.ts';

/**
 * The usual cautions for this hose, by its fluid, cover, joint and pressure. They warn and defer; no figure is given,
 * since test pressure, hold time and torque are the makers' and the local code's. Sources of the practice: an Army
 * aircraft maintenance manual and a hose distributors' association on pressure testing; 33 CFR 183.558 on marking of
 * marine fuel hose; Professional BoatBuilder of December 2017, p. 71, on wet exhausts that lose their water; the rest common
 * practice, no source.
 */
export function cautionTexts({ run }: Pick<Subject, 'run'>): string[] {
  const { service, purpose } = { service: run.run.service, purpose: run.run.service.purpose };
  const list: string[] = [];
  if (run.hose.cover === 'steel-braid')
    list.push('Braid ends: loose wires cut hands and eyes. Tape before cutting; wear gloves and eye protection.');
  list.push(
    clampedEnds(run).length > 0
      ? 'Pressure test: none at the bench, hose clamps do not bear it. In the bay no more than is asked for: air bursts what liquid only wets.'
      : 'Pressure test: with liquid, all air bled out, the hose restrained or boxed in, nobody in line with its ends, eyes and face protected. Test pressure and hold time are those of the parts’ makers or the local code. After the test neither gap nor clock is changed.',
  );
  if (FUELS.includes(service.fluid))
    list.push(
      'Fuel: no flame, spark or hot work near; fumes vented; extinguisher at hand; leak check before the first start. Whether this hose may carry this fuel here is for its maker, the local code and licensed practice.',
    );
  if (purpose.startsWith('turbo-oil') || service.fluid === 'engine-oil')
    list.push('Hot oil on an exhaust burns: leak check cold, then hot, and again after the first drive.');
  if (purpose === 'wet-exhaust')
    list.push(
      'Wet exhaust: without its water it gets hot enough to burn its hose; an alarm for its temperature, and hose that ran dry is not trusted again.',
    );
  if (service.fluid === 'coolant') list.push('Coolant: open the system only when cold; it scalds.');
  if (run.a.end.joint === 'crimp' || run.b.end.joint === 'crimp')
    list.push(
      'Crimp: die, diameter and insertion as the hose’s and end’s maker states; too small is scrap, never opened again.',
    );
  list.push('Do not mix makers’ hose and ends unless their makers approve the pair. Two wrenches at every nut.');
  return list;
}

export function cautions(subject: Subject): Block {
  const { paper, widthMm } = subject;
  const texts = cautionTexts(subject).map((t) => textBlock(paper, `▪ ${t}`, widthMm, { sizePt: TYPE.tiny + 0.4 }));
  return stack([heading('Cautions', widthMm), stack(texts, 0.5)]);
}

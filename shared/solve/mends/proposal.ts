import type { Finding, Lay } from '../../document/lay/schema.ts';
import type { MendAnswer, MendEdit } from '../../document/mends/schema.ts';
import type { PartTables } from '../../document/parts/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';

/** What a proposal is made from: one finding of one laid run, and the parts that the user has. */
export interface MendContext {
  readonly tables: PartTables;
  readonly run: ResolvedRun;
  readonly lay: Lay;
  readonly finding: Finding;
}

/** A change that may mend a finding; whether it does, only laying the hose so can tell. */
export interface Proposal {
  readonly edit: MendEdit;
  /** what is changed, with a capital and without a full stop */
  readonly words: string;
  readonly how: MendAnswer['how'];
  /** how much it changes for the builder, to order by: 1 = a turn of an end, 6 = both ends */
  readonly change: number;
  readonly toGet: readonly string[];
}

/** Proposes changes for a finding, most promising first; none where it knows none. Pure. */
export type Proposer = (context: MendContext) => Proposal[];

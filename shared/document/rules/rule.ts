/** A limit that a check or the router goes by, with whose word it is. */
export interface Rule {
  readonly id: string;
  /** What it limits, in the trade's words. */
  readonly title: string;
  readonly value: number;
  readonly unit:
    | 'mm'
    | 'deg'
    | 'ratio'
    | 'hose diameters'
    | 'bores'
    | 'dash'
    | 'S/m'
    | 'deg C'
    | 'kPa'
    | 'm/s'
    | 'mV'
    | 'months'
    | 's'
    | 'count';
  /** The band that the sources give, where they give one. Same unit. */
  readonly range?: { readonly low: number; readonly high: number };
  /** Document, table, page. */
  readonly source: string;
  /** published: read in the source named. common-practice: known to the trade, no source found that states it. */
  readonly grade: 'published' | 'common-practice';
  /** Who says otherwise, and what. */
  readonly dissent?: string;
  /** Whether the user may set another value, with a reason. */
  readonly overridable: boolean;
}

/** The source line of a rule that nobody was found to publish. */
export const NO_SOURCE = 'common practice, no source';

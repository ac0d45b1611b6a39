import type { LayReport } from '../document/lay/schema.ts';
import type { Adapter, End, Hose, Roll, Sleeve } from '../document/parts/schema.ts';
import type { Port, Project, Run } from '../document/project/schema.ts';

/** One end of a run with what it is made of and what it screws on to. */
export interface SheetEnd {
  readonly port: Port;
  readonly end: End;
  /** what is screwed on the port before it, from the part outwards */
  readonly stack?: { readonly adapters: readonly { readonly adapter: Adapter }[]; readonly bare: Port } | undefined;
}

/** A run with its parts looked up: what a paper needs to know beside the lay. */
export interface SheetRun {
  readonly run: Run;
  readonly hose: Hose;
  readonly sleeve?: Sleeve | undefined;
  readonly a: SheetEnd;
  readonly b: SheetEnd;
  /** what the hose was cut from, where the bench wrote it down */
  readonly roll?: Roll | undefined;
}

/** TrueType files; `shared/` reads no disk. */
export interface SheetFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export type PaperSize = 'A4' | 'Letter';

/** Everything the cut list draws from. Nothing on paper is computed that is not in here. */
export interface CutListInput {
  readonly project: Pick<Project, 'name' | 'exampleData' | 'paperwork' | 'vehicle'> &
    Partial<Pick<Project, 'overrides'>>;
  readonly report: LayReport;
  /** hash of the project's inputs as they stand now; where it is not the report's, the report is stale and nothing is cut */
  readonly currentInputHash?: string | undefined;
  /** of each run as the project stands now, by run id; it says more than the hash of the whole, where a lay has its own */
  readonly currentRunHashes?: Readonly<Record<string, string>> | undefined;
  /** in the order they are numbered on paper */
  readonly runs: readonly SheetRun[];
  /** hose in stock, to plan the cuts from; absent or none = no such paper */
  readonly rolls?: readonly Roll[] | undefined;
}

export interface SheetInput extends CutListInput {
  readonly fonts: SheetFonts;
  /** the day of printing, `YYYY-MM-DD`; the same input on the same day gives the same bytes */
  readonly printedOn: string;
  /** default: the project's own, else A4 */
  readonly paper?: PaperSize | undefined;
}

import type { Finding, Lay } from '../../document/lay/schema.ts';
import type { CutVerdict } from '../bench/cutVerdict.ts';
import type { LengthWriter } from '../format/index.ts';
import type { SheetInput, SheetRun } from '../input.ts';
import type { Paper } from '../layout/paper.ts';

/** One hose and the paper it is drawn on: what every block of its build sheet is given. */
export interface Subject {
  readonly paper: Paper;
  readonly input: SheetInput;
  readonly run: SheetRun;
  /** 1, 2, ... in the project's order */
  readonly number: number;
  readonly verdict: CutVerdict;
  readonly findings: readonly Finding[];
  /** lengths with the fractions of an inch that the project wants */
  readonly write: LengthWriter;
  /** room between the margins, mm */
  readonly widthMm: number;
}

/** A hose that has a lay to draw. */
export interface LaidSubject extends Subject {
  readonly lay: Lay;
}

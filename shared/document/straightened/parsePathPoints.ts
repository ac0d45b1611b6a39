import papa from 'papaparse';
import { bad, good, type Problem, type Result } from '../../base/result.ts';
import { SAME_POINT_MM } from '../../base/tolerances.ts';
import { type LengthUnit, MM_PER } from '../../base/units.ts';
import { distance, type Vec3 } from '../../base/vec3.ts';

const AXES = ['x', 'y', 'z'] as const;
/** Fewer points than this do not tell a bend from a straight. */
const LEAST_POINTS = 3;

/**
 * The points of a digitised rod from a text table, in order from END A to END B, in mm. A heading row with x, y and z
 * in any order, other columns passed over; or no heading and three columns. Commas, semicolons, tabs or spaces; numbers
 * with a decimal point; lines that begin with # are passed over. unit: what one number means. Points on the same spot as the one
 * before are left out. Answers all points, or every problem with its row as the file has it.
 */
export function parsePathPoints(text: string, unit: LengthUnit): Result<readonly Vec3[]> {
  const rows = rowsOf(text);
  const [head] = rows;
  if (head === undefined)
    return bad([{ path: 'row 1', message: 'the file is empty; expected a point on each row: x, y, z' }]);
  const headed = head.cells.some((cell) => /[a-z]/i.test(cell) && Number.isNaN(Number(cell)));
  const columns = headed ? AXES.map((axis) => columnOf(head.cells, axis)) : [0, 1, 2];
  const missing = AXES.filter((_, i) => columns[i] === -1);
  if (missing.length > 0)
    return bad(missing.map((axis) => ({ path: `row ${head.row}`, message: `the heading has no column ${axis}` })));
  const problems: Problem[] = [];
  const points: Vec3[] = [];
  for (const { row, cells } of rows.slice(headed ? 1 : 0)) {
    const point = readPoint(row, cells, columns, headed, problems);
    if (point === undefined) continue;
    const mm: Vec3 = [point[0] * MM_PER[unit], point[1] * MM_PER[unit], point[2] * MM_PER[unit]];
    const last = points[points.length - 1];
    if (last === undefined || distance(last, mm) > SAME_POINT_MM) points.push(mm);
  }
  if (problems.length === 0 && points.length < LEAST_POINTS)
    problems.push({
      path: '',
      message: `expected ${LEAST_POINTS} different points or more along the rod`,
      got: String(points.length),
    });
  return problems.length > 0 ? bad(problems) : good(points);
}

interface Row {
  readonly row: number;
  readonly cells: readonly string[];
}

function rowsOf(text: string): Row[] {
  const lines = (text.startsWith('\uFEFF') ? text.slice(1) : text).split(/\r\n|\r|\n/);
  return lines.flatMap((line, i) => {
    const bare = line.trim();
    if (bare === '' || bare.startsWith('#')) return [];
    const delimiter = [';', '\t', ','].find((mark) => bare.includes(mark));
    const cells =
      delimiter === undefined ? bare.split(/\s+/) : ((papa.parse(bare, { delimiter }).data[0] ?? []) as string[]);
    return [{ row: i + 1, cells: cells.map((cell) => cell.trim()) }];
  });
}

/** A heading such as x, X or x_mm is the column of x. */
function columnOf(cells: readonly string[], axis: string): number {
  return cells.findIndex((cell) => new RegExp(`^${axis}([ _(\\[].*)?$`, 'i').test(cell));
}

function readPoint(
  row: number,
  cells: readonly string[],
  columns: readonly number[],
  headed: boolean,
  problems: Problem[],
): Vec3 | undefined {
  const before = problems.length;
  if (!headed && cells.length !== 3)
    problems.push({ path: `row ${row}`, message: 'expected three numbers: x, y, z', got: cells.join(' ') });
  const numbers = columns.map((column, i) => {
    const cell = cells[column] ?? '';
    const value = cell === '' ? Number.NaN : Number(cell);
    if (problems.length === before && !Number.isFinite(value))
      problems.push({
        path: `row ${row}, ${AXES[i]}`,
        message: 'expected a number with a decimal point',
        got: JSON.stringify(cell),
      });
    return value;
  });
  return problems.length > before ? undefined : (numbers as unknown as Vec3);
}

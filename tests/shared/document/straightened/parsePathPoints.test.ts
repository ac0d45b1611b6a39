import { expect, it } from 'vitest';
import { describeProblem } from '../../../../shared/base/result.ts';
import { parsePathPoints } from '../../../../shared/document/straightened/parsePathPoints.ts';

const problems = (text: string) => {
  const read = parsePathPoints(text, 'mm');
  return read.ok ? [] : read.problems.map(describeProblem);
};

it('reads rows of three numbers, with what shops put between them', () => {
  const points = [
    [0, 0, 0],
    [1.5, -2, 3],
    [4, 5, 6],
  ];
  for (const text of [
    '0,0,0\n1.5,-2,3\n4,5,6',
    '0;0;0\r\n1.5;-2;3\r\n4;5;6\r\n',
    '# rod of the feed\n0 0 0\n\n 1.5  -2 3\n4\t5\t6',
    '\uFEFFZ_mm,X_mm,name,y\n0,0,a,0\n3,1.5,b,-2\n6,4,c,5\n',
  ])
    expect(parsePathPoints(text, 'mm')).toEqual({ ok: true, value: points });
});

it('brings units to mm and leaves out a point given twice', () => {
  const read = parsePathPoints('0,0,0\n0,0,0\n1,0,0\n1,2,0', 'in');
  expect(read).toEqual({
    ok: true,
    value: [
      [0, 0, 0],
      [25.4, 0, 0],
      [25.4, 50.8, 0],
    ],
  });
});

it('names every row that does not read', () => {
  expect(problems('0,0,0\n1,2\n1,two,3\n1,2,3,4\n,,\n')).toEqual([
    'row 2: expected three numbers: x, y, z, got 1 2',
    'row 3, y: expected a number with a decimal point, got "two"',
    'row 4: expected three numbers: x, y, z, got 1 2 3 4',
    'row 5, x: expected a number with a decimal point, got ""',
  ]);
  expect(problems('x,y\n1,2')).toEqual(['row 1: the heading has no column z']);
  expect(problems('')).toHaveLength(1);
  expect(problems('0,0,0\n0,0,0.001\n5,0,0')).toEqual(['expected 3 different points or more along the rod, got 2']);
});

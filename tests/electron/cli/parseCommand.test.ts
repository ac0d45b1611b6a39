import { describe, expect, test } from 'vitest';
import { parseCommand } from '../../../electron/cli/parseCommand.ts';

const parse = (line: string) => parseCommand(line === '' ? [] : line.split(' '));
/** The command's name as `kind` beside what was asked of it. */
const parsed = (line: string) => {
  const result = parse(line);
  if (!result.ok || result.value.kind !== 'command') return result;
  const { command, asked } = result.value;
  return { ok: true, value: { kind: command.name, ...(asked as object) } };
};
const problems = (line: string) => {
  const result = parse(line);
  return result.ok ? [] : result.problems.map((p) => `${p.path} ${p.message}`);
};

describe('parseCommand', () => {
  test('reads what is asked', () => {
    expect(parsed('lay bay --run feed --run=drain --out o')).toEqual({
      ok: true,
      value: { kind: 'lay', project: 'bay', runs: ['feed', 'drain'], json: false, out: 'o' },
    });
    expect(parsed('check bay --lay r.json --json')).toEqual({
      ok: true,
      value: { kind: 'check', project: 'bay', report: 'r.json', runs: [], json: true },
    });
    expect(parsed('sheets bay')).toEqual({
      ok: true,
      value: { kind: 'sheets', project: 'bay', runs: [], json: false },
    });
    expect(parsed('schema')).toMatchObject({ ok: true, value: { kind: 'schema' } });
    expect(parsed('schema lay-report')).toMatchObject({ ok: true, value: { kind: 'schema' } });
    expect(parsed('serve')).toEqual({ ok: true, value: { kind: 'serve', example: false, port: 0 } });
    expect(parsed('serve --example')).toEqual({ ok: true, value: { kind: 'serve', example: true, port: 0 } });
    expect(parsed('serve bay --port 8080')).toEqual({
      ok: true,
      value: { kind: 'serve', project: 'bay', example: false, port: 8080 },
    });
    expect(parsed('lay --help')).toEqual({ ok: true, value: { kind: 'help' } });
    expect(parsed('--version')).toEqual({ ok: true, value: { kind: 'version' } });
  });

  test('reads what is moved by hand', () => {
    expect(parsed('relay bay --run feed --lay r.json')).toEqual({
      ok: true,
      value: { kind: 'relay', project: 'bay', run: 'feed', report: 'r.json', runs: ['feed'], moved: [], json: false },
    });
    expect(
      parsed('relay bay --run feed --lay r.json --pull 310,-1,2.5,3 --move a,1,2,3 --move b,4,5,-6'),
    ).toMatchObject({
      value: {
        pull: { arcLengthMm: 310, to: [-1, 2.5, 3] },
        moved: [
          { port: 'a', seatPoint: [1, 2, 3] },
          { port: 'b', seatPoint: [4, 5, -6] },
        ],
      },
    });
    expect(problems('relay bay')).toHaveLength(2);
    for (const wrong of [
      '--pull 1,2,3',
      '--pull a,1,2,3',
      '--pull=',
      '--move 1,2,3',
      '--move a,1,2',
      '--move a,1,2,3,4',
    ])
      expect(problems(`relay bay --run feed --lay r.json ${wrong}`)).toHaveLength(1);
  });

  test('reports every mistake, and never passes over an option', () => {
    expect(problems('')).toHaveLength(1);
    expect(problems('cut bay')).toEqual([expect.stringContaining('unknown command cut')]);
    expect(problems('lay')).toEqual([expect.stringContaining('expected a project file')]);
    expect(problems('check bay')).toEqual([expect.stringContaining('--lay')]);
    expect(problems('check')).toHaveLength(2);
    expect(problems('lay bay other --port 1 --lay x')).toHaveLength(3);
    expect(problems('lay bay --out')).toEqual([expect.stringContaining('expected a value')]);
    expect(problems('lay bay --out --json')).toEqual([expect.stringContaining('expected a value')]);
    expect(problems('lay bay --json=yes')).toEqual([expect.stringContaining('takes no value')]);
    expect(problems('check bay --lay')).toHaveLength(1);
    expect(problems('lay bay --colour')).toEqual([expect.stringContaining('--colour')]);
    expect(problems('schema hose')).toEqual([
      expect.stringContaining('project, lay-report, end-trial, ways-round, mends, part-tables'),
    ]);
    expect(problems('serve bay --example')).toHaveLength(1);
    for (const port of ['65536', '-1', '8o', '1.5', '']) expect(problems(`serve --port=${port}`)).toHaveLength(1);
  });
});

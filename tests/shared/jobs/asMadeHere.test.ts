import { expect, it } from 'vitest';
import { asMadeHere } from '../../../shared/jobs/asMadeHere.ts';

it('answers the same data in records and arrays of its own, one for each that came, and leaves what holds numbers packed', () => {
  const packed = new Float64Array([1, 2]);
  const shared = new Int32Array(new SharedArrayBuffer(4));
  const port = { axis: [0, 0, 1], up: [0.5, Number.POSITIVE_INFINITY, -0], name: 'a', none: undefined, nothing: null };
  const sent = { runs: [{ from: port }, { from: port }], packed, shared, by: new Map([['a', 1]]) };
  const made = asMadeHere(sent);
  expect(made).toEqual(sent);
  expect(Object.is(made.runs[0]?.from.up[2], -0)).toBe(true);
  expect(Object.keys(made.runs[0]?.from ?? {})).toEqual(Object.keys(port));
  expect(made.runs[0]?.from).not.toBe(port);
  expect(made.runs[0]?.from.axis).not.toBe(port.axis);
  expect(made.runs[0]?.from).toBe(made.runs[1]?.from);
  expect(made.packed).toBe(packed);
  expect(made.shared).toBe(shared);
  expect(made.by).toBe(sent.by);
});

import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { RunMaking } from '../../../renderer/panels/runs/RunMaking.tsx';
import { straightLay } from '../../arbitraries/lays.ts';
import { sampleEnd, sampleProject, sampleTables } from '../../arbitraries/projects.ts';

test('the steps stand in their three stages, and each torque under the name of its table', () => {
  const lay = straightLay();
  const tables = { ...sampleTables(), ends: [sampleEnd({ material: 'steel', torqueNm: 50, source: 'sheet 7' })] };
  const html = renderToStaticMarkup(<RunMaking lay={lay} project={sampleProject()} tables={tables} />);
  const order = ['Before the second end', 'Once both ends are on', 'Proof test and after'].map((t) => html.indexOf(t));
  expect(order[0]).toBeGreaterThan(0);
  expect(order).toEqual([...order].sort((a, b) => a - b));
  expect(html).toContain('Only now END B');
  expect(html).toContain('sheet 7; this one holds');
  expect(html).toContain('50.0 N·m (443 in-lb)');
  expect(html).toContain('Navy, swivel nut on hose, steel');
  expect(html).toContain('Two wrenches');
});

import { expect, it } from 'vitest';
import { z } from 'zod';
import { LayReport } from '../../../../shared/document/lay/schema.ts';
import { parseProject } from '../../../../shared/document/project/parseProject.ts';
import {
  layReportJsonSchema,
  partTableJsonSchema,
  projectJsonSchema,
} from '../../../../shared/document/schemas/jsonSchemas.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleProject, sampleTables } from '../../../arbitraries/projects.ts';

/** Reads a published schema back into a checker, so that what is tested is the published text. */
function accepts(schema: object, value: unknown): boolean {
  return z.fromJSONSchema(JSON.parse(JSON.stringify(schema)) as never).safeParse(value).success;
}

it('carries a name, a title and its draft', () => {
  expect(projectJsonSchema()).toMatchObject({
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:hosewright:schema:project:1',
    title: 'Hosewright project',
    type: 'object',
  });
  expect(layReportJsonSchema()['$id']).toBe('urn:hosewright:schema:lay-report:1');
  expect(partTableJsonSchema()['$id']).toBe('urn:hosewright:schema:part-tables:1');
});

it('describes the figures', () => {
  expect(JSON.stringify(partTableJsonSchema())).toContain('where the maker measures it');
});

it('accepts and refuses project files as the parser does', () => {
  const schema = projectJsonSchema();
  const { seed: _seed, overrides: _overrides, ...withDefaults } = sampleProject();
  for (const good of [sampleProject(), withDefaults]) {
    expect(parseProject(JSON.stringify(good)).ok).toBe(true);
    expect(accepts(schema, good)).toBe(true);
  }
  const broken = [
    { ...sampleProject(), seed: -1 },
    { ...sampleProject(), colour: 'blue' },
    { ...sampleProject(), version: 2 },
    { ...sampleProject(), runs: [{ id: 'r1' }] },
    { ...sampleProject(), ports: [{ ...sampleProject().ports[0], axis: [1, 2] }] },
    { ...sampleProject(), tables: { hoses: ['/etc/hoses.csv'], ends: ['ends.csv'] } },
  ];
  for (const bad of broken) {
    expect(parseProject(JSON.stringify(bad)).ok).toBe(false);
    expect(accepts(schema, bad)).toBe(false);
  }
});

it('accepts part tables and lay reports', () => {
  expect(accepts(partTableJsonSchema(), sampleTables())).toBe(true);
  expect(accepts(partTableJsonSchema(), { ...sampleTables(), bolts: [] })).toBe(false);
  const report: LayReport = {
    format: 'hosewright-lay-report',
    version: 1,
    solverVersion: 'test',
    seed: 1,
    project: { name: 'Sample', exampleData: true, inputHash: 'x' },
    lays: [straightLay()],
    findings: [],
  };
  expect(LayReport.safeParse(report).success).toBe(true);
  expect(accepts(layReportJsonSchema(), report)).toBe(true);
  expect(accepts(layReportJsonSchema(), { ...report, lays: [{}] })).toBe(false);
});

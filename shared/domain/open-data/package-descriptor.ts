import { PACKAGE_TABLES, type PackageTable } from './package-tables';

const PROFILES = 'https://datapackage.org/profiles/2.0';

/** Size and checksum of a file that is written out; left out of what is served, which changes with every case. */
export type FileFacts = { bytes: number; hash: string };

/** Files of the package that are not tables. */
export const CASES_JSONL = 'cases.jsonl';
export const CASE_SCHEMA = 'case.schema.json';

/**
 * The descriptor of the accepted casebook as a Data Package, version 2 of the standard. Paths are relative to it.
 *
 * @param facts by path; what has none is described without.
 */
export function packageDescriptor(facts: ReadonlyMap<string, FileFacts> = new Map()) {
  const withFacts = <T extends { path: string }>(resource: T) => ({ ...resource, ...facts.get(resource.path) });
  return {
    $schema: `${PROFILES}/datapackage.json`,
    name: 'second-bench-casebook',
    title: 'Second Bench casebook',
    description:
      'Accepted repair cases, readings of working units, and the vocabulary that describes them. Cases are volunteered, not sampled. Name the source as "Second Bench casebook".',
    keywords: ['repair', 'fault diagnosis', 'home computer', 'console'],
    licenses: [
      { name: 'CC-BY-4.0', path: 'https://creativecommons.org/licenses/by/4.0/legalcode', title: 'Creative Commons Attribution 4.0 International' },
    ],
    resources: [
      withFacts({
        $schema: `${PROFILES}/dataresource.json`,
        name: 'cases-in-full',
        path: CASES_JSONL,
        title: 'Cases in full, one JSON object a line',
        description: `Accepted cases as "import" reads them; ${CASE_SCHEMA} describes a line.`,
        format: 'jsonl',
        mediatype: 'application/jsonl',
        encoding: 'utf-8',
      }),
      withFacts({
        $schema: `${PROFILES}/dataresource.json`,
        name: 'case-schema',
        path: CASE_SCHEMA,
        title: 'JSON Schema of one case',
        format: 'json',
        mediatype: 'application/schema+json',
        encoding: 'utf-8',
      }),
      ...PACKAGE_TABLES.map((table) => withFacts(tableResource(table))),
    ],
  };
}

function tableResource({ name, title, description, fields, primaryKey, foreignKeys }: PackageTable) {
  return {
    $schema: `${PROFILES}/dataresource.json`,
    name,
    type: 'table' as const,
    path: `${name}.csv`,
    title,
    description,
    format: 'csv',
    mediatype: 'text/csv',
    encoding: 'utf-8',
    schema: {
      $schema: `${PROFILES}/tableschema.json`,
      fields: [...fields],
      missingValues: [''],
      ...(primaryKey ? { primaryKey } : {}),
      ...(foreignKeys ? { foreignKeys } : {}),
    },
  };
}

import type { Metadata } from 'next';
import { fieldMeaning } from '../../../shared/domain/open-data/data-dictionary';
import { CASE_SCHEMA, CASES_JSONL, packageDescriptor } from '../../../shared/domain/open-data/package-descriptor';
import { PACKAGE_TABLES, type PackageTable } from '../../../shared/domain/open-data/package-tables';
import { Volunteered } from '../../_components/volunteered';

export const metadata: Metadata = {
  title: 'Open data',
  description: 'The accepted casebook as a data package, an HTTP interface for programs, and feeds of new cases. CC BY 4.0.',
};

export default function DataPage() {
  const [licence] = packageDescriptor().licenses;
  return (
    <>
      <h1>Open data</h1>
      <p className="lead">Everything accepted is yours to take, also for money, as long as you name “Second Bench casebook”.</p>
      <section className="section">
        <h2>Take it away</h2>
        <p>
          <a href={`/data/${CASES_JSONL}`} className="press" download>
            All cases (JSON Lines)
          </a>{' '}
          <a href="/data/cases.csv" className="press" download>
            All cases (CSV)
          </a>
        </p>
        <p>
          <a href="/data/datapackage.json">datapackage.json</a> describes all files as a Data Package, version 2 (datapackage.org);{' '}
          <a href={`/data/${CASE_SCHEMA}`}>{CASE_SCHEMA}</a> describes one line of the JSON Lines. Whoever runs this site can write
          it to a folder, with sizes and checksums: <code>npm run cli -- export --package folder</code>.
        </p>
        <p>
          Licence:{' '}
          <a href={licence?.path} rel="license">
            {licence?.title}
          </a>
          . Cases carry no names, places, exact dates or serial numbers, and nothing says who posted them.
        </p>
      </section>
      <section className="section">
        <h2>For programs</h2>
        <p>
          The same figures as on the pages, read-only, as JSON under <code>/api/v1</code>:{' '}
          <a href="/api/v1/openapi.json">its description</a> is OpenAPI 3.1. Errors are problem details (RFC 9457). Up to 300
          requests in five minutes are answered. For example:
        </p>
        <ul className="place-list">
          {['/api/v1/symptoms', '/api/v1/symptoms/grey-screen', '/api/v1/cases?symptom=grey-screen'].map((path) => (
            <li key={path}>
              <a href={path}>
                <code>{path}</code>
              </a>
            </li>
          ))}
        </ul>
      </section>
      <section className="section">
        <h2>New cases as a feed</h2>
        <p>
          <a href="/cases/feed.atom">All new cases</a> (Atom, RFC 4287). Every symptom and every device has one of its own; the
          link stands below its cases. Times are months: finer ones are not kept.
        </p>
      </section>
      <section className="section">
        <h2>Data dictionary</h2>
        <p className="section-sub">An empty cell means “not recorded”.</p>
        {PACKAGE_TABLES.map((table) => (
          <TableDictionary key={table.name} table={table} />
        ))}
      </section>
      <Volunteered />
    </>
  );
}

/** One file with its columns, folded away until it is wanted. */
function TableDictionary({ table }: { table: PackageTable }) {
  return (
    <details className="usual">
      <summary>
        <span className="figure">{table.name}.csv</span> <span className="soft">{table.title}</span>
      </summary>
      <p>
        {table.description}{' '}
        <a href={`/data/${table.name}.csv`} download>
          Download
        </a>
      </p>
      <table className="plain-table dictionary">
        <thead>
          <tr>
            <th scope="col">Column</th>
            <th scope="col">Type</th>
            <th scope="col">What it holds</th>
          </tr>
        </thead>
        <tbody>
          {table.fields.map((field) => (
            <tr key={field.name}>
              <th scope="row" className="figure">
                {field.name}
              </th>
              <td>{field.type}</td>
              <td>{fieldMeaning(field)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

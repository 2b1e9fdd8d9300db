import { packageDescriptor } from './package-descriptor';
import { PACKAGE_TABLES, type TableField } from './package-tables';

/** The data dictionary for people, as Markdown: every table with every column. */
export function dataDictionary(): string {
  const { title, description, licenses } = packageDescriptor();
  const head = [
    `# ${title}: data dictionary`,
    description,
    `Licence: ${licenses.map((licence) => `${licence.title} (${licence.path})`).join(', ')}.`,
    'An empty cell means "not recorded". Files are UTF-8; CSV as in RFC 4180.',
  ];
  const tables = PACKAGE_TABLES.map((table) =>
    [
      `## ${table.name}.csv`,
      table.description,
      ['| column | type | meaning |', '|---|---|---|', ...table.fields.map(fieldLine)].join('\n'),
    ].join('\n\n'),
  );
  return `${[...head, ...tables].join('\n\n')}\n`;
}

function fieldLine(field: TableField): string {
  return `| ${field.name} | ${field.type}${field.constraints?.required ? ', always there' : ''} | ${fieldMeaning(field)} |`;
}

/** What a column holds, with the values that it can have. */
export function fieldMeaning({ description, constraints }: TableField): string {
  return constraints?.enum ? `${description} One of: ${constraints.enum.join(', ')}.` : description;
}

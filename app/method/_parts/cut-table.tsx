type CutTableProps = {
  /** What was known of each unit. */
  cut: string;
  /** Heads of the figures. */
  heads: readonly string[];
  /** A model's name, and its figures in the order of the heads. */
  rows: readonly { model: string; figures: readonly string[] }[];
};

/** How models did where so much was known. */
export function CutTable({ cut, heads, rows }: CutTableProps) {
  return (
    <table className="plain-table">
      <caption>
        What was known: <strong>{cut}</strong>
      </caption>
      <thead>
        <tr>
          {['Model', ...heads].map((head) => (
            <th scope="col" key={head}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ model, figures }) => (
          <tr key={model}>
            <th scope="row">{model}</th>
            {heads.map((head, i) => (
              <td className="figure" key={head}>
                {figures[i]}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

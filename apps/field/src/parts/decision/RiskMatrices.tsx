/** The trade's two matrices in full, with the cell that a target falls in marked by a dot, a frame and a word. */
import {
  CONSEQUENCES,
  EVENT_LIKELIHOODS,
  eventLikelihood,
  FAILURE_LIKELIHOODS,
  IMPACT_LIKELIHOODS,
  riskOf,
  type TargetRisk,
} from '@standfast/engine';

export function RiskMatrices({ row }: { row: TargetRisk }) {
  return (
    <div className="matrices">
      <Matrix
        caption="First: likelihood of failure and impact"
        corner="Failure ↓ Impact →"
        columns={IMPACT_LIKELIHOODS}
        rows={FAILURE_LIKELIHOODS}
        cell={eventLikelihood}
        lit={[row.likelihoodOfFailure.taken, row.likelihoodOfImpact.taken]}
      />
      <Matrix
        caption="Second: risk"
        corner="Failure and impact ↓ Harm →"
        columns={CONSEQUENCES}
        rows={EVENT_LIKELIHOODS}
        cell={riskOf}
        lit={[row.event, row.consequences.taken]}
      />
    </div>
  );
}

interface MatrixProps<Row extends string, Column extends string> {
  caption: string;
  corner: string;
  rows: readonly Row[];
  columns: readonly Column[];
  cell: (row: Row, column: Column) => string;
  lit: readonly [Row, Column];
}

function Matrix<Row extends string, Column extends string>(props: MatrixProps<Row, Column>) {
  const { caption, corner, rows, columns, cell, lit } = props;
  return (
    <table className="matrix">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{corner}</th>
          {columns.map((column) => (
            <th key={column} scope="col" data-lit={column === lit[1] ? '' : undefined}>
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row}>
            <th scope="row" data-lit={row === lit[0] ? '' : undefined}>
              {row}
            </th>
            {columns.map((column) => {
              const here = row === lit[0] && column === lit[1];
              return (
                <td key={column} data-lit={here ? '' : undefined}>
                  {here && (
                    <>
                      <span aria-hidden="true">● </span>
                      <span className="out-of-sight">here: </span>
                    </>
                  )}
                  {cell(row, column)}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A number that can be opened: press it and it shows its formula, what went in, and the source. */
import type { ReactNode } from 'react';
import { Button, DialogTrigger } from 'react-aria-components';
import type { Explanation } from '../explain/explanation.ts';
import { Sheet } from './Sheet.tsx';

interface OpenNumberProps {
  explanation: Explanation;
  children: ReactNode;
  className?: string;
}

export function OpenNumber({ explanation, children, className }: OpenNumberProps) {
  return (
    <DialogTrigger>
      <Button className={`open-number ${className ?? ''}`}>
        {children}
        <span className="out-of-sight">{` ${explanation.name}: how it was found`}</span>
      </Button>
      <Sheet title={explanation.name}>
        <ExplanationText explanation={explanation} />
      </Sheet>
    </DialogTrigger>
  );
}

function ExplanationText({ explanation }: { explanation: Explanation }) {
  const { value, meaning, formula, inputs, sources, limits } = explanation;
  return (
    <div className="explanation">
      <p className="explained-value">{value}</p>
      <p>{meaning}</p>
      {formula.length > 0 && (
        <section>
          <h3>How it is worked out</h3>
          {formula.map((line) => (
            <p key={line} className="formula">
              {line}
            </p>
          ))}
        </section>
      )}
      {inputs.length > 0 && (
        <section>
          <h3>What went in</h3>
          <table className="inputs">
            <thead>
              <tr>
                <th scope="col">Quantity</th>
                <th scope="col">Value</th>
                <th scope="col">From</th>
              </tr>
            </thead>
            <tbody>
              {inputs.map((input) => (
                <tr key={`${input.name} ${input.value}`}>
                  <th scope="row">{input.name}</th>
                  <td>{input.value}</td>
                  <td>{input.source}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {sources.length > 0 && (
        <section>
          <h3>Sources</h3>
          <ul className="sources">
            {sources.map((source) => (
              <li key={source}>{source}</li>
            ))}
          </ul>
        </section>
      )}
      {limits && (
        <section>
          <h3>What it leaves out</h3>
          <p>{limits}</p>
        </section>
      )}
    </div>
  );
}

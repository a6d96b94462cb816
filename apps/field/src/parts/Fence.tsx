/** Never a white page: whatever breaks while drawing, the data can still be taken out. */
import type { CaseFile } from '@standfast/casefile';
import { Component, type ErrorInfo, type ReactNode } from 'react';
import { zipOfCase } from '../storage/cases.ts';
import { database } from '../storage/database.ts';
import { fileNameOf, offerDownload } from '../storage/fileName.ts';

interface FenceState {
  fault: Error | null;
  said: string;
}

// React offers error boundaries as classes only.
export class Fence extends Component<{ children: ReactNode }, FenceState> {
  override state: FenceState = { fault: null, said: '' };

  static getDerivedStateFromError(fault: Error): Partial<FenceState> {
    return { fault };
  }

  override componentDidCatch(fault: Error, info: ErrorInfo) {
    console.error(fault, info.componentStack);
  }

  /** One case that cannot be packed must not keep the others from being saved. */
  exportAll = async () => {
    const told: string[] = [];
    try {
      for (const record of await database.cases.where('deletedAt').equals(0).toArray()) {
        const caseFile = record.caseFile as Partial<CaseFile>;
        const name = fileNameOf(caseFile.tree?.label ?? record.id, caseFile.visitedOn, 'zip');
        try {
          offerDownload(await zipOfCase(record), name, 'application/zip');
          told.push(`${name} saved.`);
        } catch (thrown) {
          told.push(`${name} could not be packed: ${messageOf(thrown)}`);
        }
      }
    } catch (thrown) {
      told.push(`The cases could not be read: ${messageOf(thrown)}`);
    }
    this.setState({ said: told.join('\n') });
  };

  override render() {
    const { fault, said } = this.state;
    if (!fault) return this.props.children;
    return (
      <main className="fence">
        <h1>This page broke, your cases did not</h1>
        <p>
          Everything up to the last change is kept in this browser. Save your cases as zip files to be safe,
          then load the page again.
        </p>
        <div className="actions">
          <button type="button" className="button primary" onClick={this.exportAll}>
            Save all cases as zip
          </button>
          <button type="button" className="button" onClick={() => location.reload()}>
            Load the page again
          </button>
          <button
            type="button"
            className="button"
            onClick={() => {
              location.hash = '/';
              location.reload();
            }}
          >
            Go to the list of cases
          </button>
        </div>
        <p role="status" className="said">
          {said}
        </p>
        <details>
          <summary>What happened</summary>
          <pre>{`${fault.name}: ${fault.message}`}</pre>
        </details>
      </main>
    );
  }
}

function messageOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}

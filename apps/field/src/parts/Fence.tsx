/** Never a white page: whatever breaks while drawing, the data can still be taken out. */
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

  exportAll = async () => {
    try {
      const cases = await database.cases.where('deletedAt').equals(0).toArray();
      for (const record of cases) {
        const { tree, visitedOn } = record.caseFile;
        offerDownload(await zipOfCase(record), fileNameOf(tree.label, visitedOn, 'zip'), 'application/zip');
      }
      this.setState({ said: `${cases.length} ${cases.length === 1 ? 'case' : 'cases'} saved as zip.` });
    } catch (thrown) {
      this.setState({ said: `Saving failed: ${thrown instanceof Error ? thrown.message : String(thrown)}` });
    }
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
        <p role="status">{said}</p>
        <details>
          <summary>What happened</summary>
          <pre>{`${fault.name}: ${fault.message}`}</pre>
        </details>
      </main>
    );
  }
}

/** The head of the pages that are of no one case. */
import { Link } from 'wouter';
import { useOnline } from '../../state/online.ts';
import { SettingsButton } from '../SettingsButton.tsx';

export function Masthead() {
  const online = useOnline();
  return (
    <header className="masthead">
      <div>
        <h1>Standfast</h1>
        <p className="subtitle">From drilling traces to a stability decision</p>
      </div>
      <div className="masthead-tools">
        {!online && <span className="offline">No network, nothing lost</span>}
        <Link className="button quiet" href="/about">
          About and cautions
        </Link>
        <SettingsButton />
      </div>
    </header>
  );
}

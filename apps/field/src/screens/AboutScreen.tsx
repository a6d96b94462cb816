/** What this is, what it is not, and where the data are. */
import { ENGINE_VERSION } from '@standfast/engine';
import { ArrowLeft } from 'lucide-react';
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { Cautions } from '../parts/Notices.tsx';
import { SettingsButton } from '../parts/SettingsButton.tsx';
import { type Persistence, requestPersistence } from '../storage/persistence.ts';

export function AboutScreen() {
  const [persistence, setPersistence] = useState<Persistence | null>(null);
  useEffect(() => {
    document.title = 'About and cautions · Standfast';
    requestPersistence().then(setPersistence, () => setPersistence(null));
  }, []);
  return (
    <div className="cases-page">
      <header className="masthead">
        <div>
          <h1>About and cautions</h1>
          <p className="subtitle">Standfast, engine {ENGINE_VERSION}</p>
        </div>
        <div className="masthead-tools">
          <Link className="button quiet" href="/">
            <ArrowLeft aria-hidden /> All cases
          </Link>
          <SettingsButton />
        </div>
      </header>
      <main className="prose">
        <p>
          Standfast reads resistance-drilling traces, rebuilds the soundness of the section between the
          needles, works out how much strength is left in each direction, sets it against the wind on the
          crown, and says how sure it is of every number. Press any underlined number to see how it was found.
        </p>
        <Cautions />
        <section>
          <h2>How to read the pictures</h2>
          <ul className="plain-list">
            <li>North is up. Azimuths are degrees clockwise from north.</li>
            <li>The darker the wood, the sounder. Light hatching means little is known there.</li>
            <li>
              A band on a rose or a bar holds the value with 90 % probability; the line in it is the middle.
            </li>
            <li>Directions of strength and safety are those in which the stem would bend.</li>
          </ul>
        </section>
        <section>
          <h2>Where your data are</h2>
          <p>
            In this browser, on this device, and nowhere else. Nothing is sent over the network. Each change
            is saved as you make it. Save a case as a zip to keep it elsewhere; the zip opens here and on the
            command line.
          </p>
          {persistence && (
            <p className="hint">
              {persistence.kept === true && 'This browser has promised not to clear the data by itself. '}
              {persistence.kept === false &&
                'This browser may clear the data when the device runs out of room. Install the app, or save zips. '}
              {persistence.usedBytes !== null &&
                persistence.roomBytes !== null &&
                `In use: ${megabytes(persistence.usedBytes)} of ${megabytes(persistence.roomBytes)}.`}
            </p>
          )}
        </section>
        <section>
          <h2>Licence</h2>
          <p>
            MIT. The method, its sources and how well it does on trees of known soundness are in the docs
            folder.
          </p>
        </section>
      </main>
    </div>
  );
}

function megabytes(bytes: number): string {
  return `${Math.round(bytes / 1e6)} MB`;
}

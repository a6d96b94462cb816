/** Where the trees stand: marks by risk on a map drawn on this device, and the same trees as a list. */
import { riskPlace } from '@standfast/casefile';
import { liveQuery } from 'dexie';
import { LocateFixed, Maximize, Minus, Plus, Route, X } from 'lucide-react';
import { type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { linesInPlane, type MapTree, type OwnPlace } from '../map/draw.ts';
import { planeAround } from '../map/plane.ts';
import { ChooseFile } from '../parts/ChooseFile.tsx';
import { GrowingList } from '../parts/list/GrowingList.tsx';
import { ListFilters } from '../parts/list/ListFilters.tsx';
import { ListHead } from '../parts/list/ListHead.tsx';
import { Masthead } from '../parts/list/Masthead.tsx';
import { rowName, rowSafety } from '../parts/list/WorkRowView.tsx';
import { type MapHandle, TreeMap } from '../parts/map/TreeMap.tsx';
import { RiskMark } from '../parts/RiskMark.tsx';
import { today } from '../state/bringIn.ts';
import { INVENTORY_FILES } from '../state/incoming.ts';
import { listed, RISK_FILTERS, riskWord, useListView } from '../state/listView.ts';
import { useSettings } from '../state/settings.ts';
import { complain, say } from '../state/toast.tsx';
import { useWorkList } from '../state/useWorkList.ts';
import { type BackgroundRecord, database } from '../storage/database.ts';
import { storageFaultOf } from '../storage/faults.ts';
import type { ListEntry } from '../storage/summaries.ts';
import { intervalText, measure } from '../units/quantities.ts';
import { inventoryWorker } from '../work/inventory.ts';

const NONE: ReadonlySet<string> = new Set();

export function MapScreen() {
  const listing = useWorkList();
  const view = useListView();
  const background = useBackground();
  const map = useRef<MapHandle>(null);
  const [place, setPlace] = useState<{ longitude: number; latitude: number; accuracyM: number } | null>(null);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(NONE);
  const [inView, setInView] = useState<ReadonlySet<string> | null>(null);
  useEffect(() => {
    document.title = 'Map · Standfast';
  }, []);

  const kept = listing?.kept;
  const shown = useMemo(() => listed(kept ?? [], view, today()), [kept, view]);
  const { plane, trees, without } = useMemo(() => placed(shown), [shown]);
  const lines = useMemo(() => background && linesInPlane(background, plane), [background, plane]);
  const own = useMemo<OwnPlace | null>(
    () => place && { ...plane.toPlane(place), accuracyM: place.accuracyM },
    [place, plane],
  );
  const beside = useMemo(() => (inView ? shown.filter(({ id }) => inView.has(id)) : shown), [shown, inView]);
  const here = trees.length > 0 || background !== null;
  return (
    <div className="cases-page map-page">
      <Masthead />
      <main>
        <ListHead here="map" shown={shown} total={kept?.length ?? 0} />
        {kept && kept.length > 1 && <ListFilters entries={kept} />}
        {kept && trees.length === 0 && <NoPlace cases={kept.length} shown={shown.length} />}
        {here && (
          <div className="map-columns">
            <div className="map-frame">
              <TreeMap
                handle={map}
                plane={plane}
                trees={trees}
                lines={lines}
                own={own}
                chosen={chosen}
                onChoose={(ids) => setChosen(new Set(ids))}
                onRest={(ids) => setInView(new Set(ids))}
              />
              <MapTools
                map={map}
                onPlace={setPlace}
                onCentre={(at) => map.current?.centre(plane.toPlane(at))}
              />
              {chosen.size > 0 && (
                <ChosenTrees
                  entries={shown.filter(({ id }) => chosen.has(id))}
                  close={() => setChosen(NONE)}
                />
              )}
            </div>
            <section className="map-list" aria-label="Trees in view">
              <h3>
                In view <span className="list-count">{beside.length}</span>
              </h3>
              <GrowingList className="map-rows" items={beside}>
                {(entry) => <MapRow key={entry.id} entry={entry} />}
              </GrowingList>
              {without > 0 && (
                <p className="hint">
                  {without === 1 ? 'One case has' : `${without} cases have`} no position; it is set under Tree
                  and site.
                </p>
              )}
            </section>
            <Legend />
          </div>
        )}
        <BackgroundTool background={background} />
      </main>
    </div>
  );
}

/** The trees that have a position, in the plane of the map. */
function placed(entries: readonly ListEntry[]) {
  const located = entries.flatMap(({ id, row }) => {
    const { latitude, longitude } = row;
    return latitude === null || longitude === null ? [] : [{ id, row, latitude, longitude }];
  });
  const plane = planeAround(located);
  const trees = located.map(
    ({ id, row, ...at }): MapTree => ({
      id,
      label: rowName(row),
      risk: riskWord(row),
      riskPlace: riskPlace(row),
      ...plane.toPlane(at),
    }),
  );
  return { plane, trees, without: entries.length - trees.length };
}

function NoPlace({ cases, shown }: { cases: number; shown: number }) {
  return (
    <section className="empty">
      <h3>{cases > 0 && shown === 0 ? 'No case is like that' : 'No tree has a position yet'}</h3>
      <p>
        A tree’s position is set in its case, under Tree and site. A tree inventory (GeoJSON) brings many at
        once: drop the file here, or bring it in from the list.
      </p>
      <Link className="button" href="/">
        Go to the list
      </Link>
    </section>
  );
}

function MapRow({ entry: { id, row } }: { entry: ListEntry }) {
  const safety = rowSafety(row);
  const risk = riskWord(row);
  return (
    <li>
      <Link className="map-row" href={`/case/${id}/decision`}>
        <RiskMark risk={risk} />
        <span>
          <span className="map-row-label">{rowName(row)}</span>
          <small>
            {risk}
            {safety && `, safety ${intervalText(safety)}`}
          </small>
        </span>
      </Link>
    </li>
  );
}

/** What was tapped: a tree, or several that stand at one place. */
function ChosenTrees({ entries, close }: { entries: readonly ListEntry[]; close: () => void }) {
  if (entries.length === 0) return null;
  return (
    <section className="map-card" aria-label="Chosen on the map">
      <ul className="map-rows">
        {entries.slice(0, 12).map((entry) => (
          <MapRow key={entry.id} entry={entry} />
        ))}
      </ul>
      {entries.length > 12 && <p className="hint">and {entries.length - 12} more at this place</p>}
      <Button className="icon-button" aria-label="Close" onPress={close}>
        <X aria-hidden />
      </Button>
    </section>
  );
}

interface MapToolsProps {
  map: RefObject<MapHandle | null>;
  onPlace: (place: { longitude: number; latitude: number; accuracyM: number }) => void;
  onCentre: (place: { longitude: number; latitude: number }) => void;
}

function MapTools({ map, onPlace, onCentre }: MapToolsProps) {
  const { units } = useSettings();
  const locate = () => {
    if (!('geolocation' in navigator)) {
      complain('This device does not tell its position.');
      return;
    }
    navigator.geolocation.getCurrentPosition(
      ({ coords: { longitude, latitude, accuracy } }) => {
        onPlace({ longitude, latitude, accuracyM: accuracy });
        onCentre({ longitude, latitude });
        say(`You are within ${measure(accuracy, 'heightM', units)} of the dot. It is not kept.`);
      },
      ({ code }) =>
        complain(
          code === 1
            ? 'Your position was not given: allow it for this page in the browser, then tap again.'
            : 'Your position could not be found. Try again under the open sky.',
        ),
      { enableHighAccuracy: true, timeout: 15_000, maximumAge: 10_000 },
    );
  };
  return (
    <div className="map-tools">
      <Button className="icon-button edged" aria-label="Zoom in" onPress={() => map.current?.zoomBy(1.6)}>
        <Plus aria-hidden />
      </Button>
      <Button
        className="icon-button edged"
        aria-label="Zoom out"
        onPress={() => map.current?.zoomBy(1 / 1.6)}
      >
        <Minus aria-hidden />
      </Button>
      <Button
        className="icon-button edged"
        aria-label="Show all trees"
        onPress={() => map.current?.showAll()}
      >
        <Maximize aria-hidden />
      </Button>
      <Button className="icon-button edged" aria-label="Where I am" onPress={locate}>
        <LocateFixed aria-hidden />
      </Button>
    </div>
  );
}

function Legend() {
  return (
    <ul className="map-legend" aria-label="What the marks mean">
      {RISK_FILTERS.filter((risk) => risk !== 'any').map((risk) => (
        <li key={risk}>
          <RiskMark risk={risk} /> {risk}
        </li>
      ))}
      <li className="hint">
        A ring with a number: so many trees, with the mark of the worst. Grid as the scale bar.
      </li>
    </ul>
  );
}

function useBackground(): BackgroundRecord | null {
  const [background, setBackground] = useState<BackgroundRecord | null>(null);
  useEffect(() => {
    const following = liveQuery(() => database.backgrounds.get('background')).subscribe({
      next: (found) => setBackground(found ?? null),
      error: (thrown: unknown) => complain(storageFaultOf(thrown).message),
    });
    return () => following.unsubscribe();
  }, []);
  return background;
}

function BackgroundTool({ background }: { background: BackgroundRecord | null }) {
  const take = async (file: File) => {
    const outcome = await inventoryWorker()
      .background(file)
      .catch((thrown: unknown) => ({ ok: false as const, message: String(thrown) }));
    if (outcome.ok) say(`${file.name}: ${outcome.value.lines} lines, kept on this device.`);
    else complain(outcome.message);
  };
  return (
    <div className="actions map-background">
      <ChooseFile label="Background of roads, paths or boundaries" accept={INVENTORY_FILES} onChoose={take}>
        <Route aria-hidden /> {background ? 'Other background' : 'Background from a file'}
      </ChooseFile>
      {background ? (
        <>
          <span className="hint">{background.name}</span>
          <Button className="button quiet" onPress={() => database.backgrounds.delete('background')}>
            Take it away
          </Button>
        </>
      ) : (
        <span className="hint">Roads, paths or boundaries as GeoJSON; they stay on this device.</span>
      )}
    </div>
  );
}

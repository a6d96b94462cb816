/** The app: which screen is on, and what lies over every screen. */
import { useEffect } from 'react';
import { Redirect, Route, Router, Switch } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { DropAnywhere } from './parts/DropAnywhere.tsx';
import { Fence } from './parts/Fence.tsx';
import { UpdateOffer } from './parts/UpdateOffer.tsx';
import { AboutScreen } from './screens/AboutScreen.tsx';
import { CaseScreen } from './screens/CaseScreen.tsx';
import { CasesScreen } from './screens/CasesScreen.tsx';
import { InventoryStep } from './screens/InventoryStep.tsx';
import { MapScreen } from './screens/MapScreen.tsx';
import { Start } from './screens/Start.tsx';
import { VerifyStep } from './screens/VerifyStep.tsx';
import { themeShown } from './state/settings.ts';
import { Toasts } from './state/toast.tsx';

export function App() {
  useEffect(() => {
    document.documentElement.dataset.theme = themeShown();
  }, []);
  return (
    <Fence>
      {/* The hash keeps links working from any folder, from a file server and without a network. */}
      <Router hook={useHashLocation}>
        <Start>
          <Switch>
            <Route path="/">
              <CasesScreen />
            </Route>
            <Route path="/map">
              <MapScreen />
            </Route>
            <Route path="/about">
              <AboutScreen />
            </Route>
            <Route path="/case/:id">{({ id }) => <Redirect to={`/case/${id}/decision`} replace />}</Route>
            <Route path="/case/:id/:place/:part?">
              {({ id, place, part }) => <CaseScreen key={id} id={id} place={place} part={part ?? null} />}
            </Route>
            <Route>
              <Redirect to="/" replace />
            </Route>
          </Switch>
        </Start>
        <DropAnywhere />
        <InventoryStep />
        <VerifyStep />
      </Router>
      <Toasts />
      <UpdateOffer />
    </Fence>
  );
}

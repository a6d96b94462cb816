/** A newer version is loaded only when the person says so: nothing changes under their hands. */

import { useRegisterSW } from 'virtual:pwa-register/react';
import { Button } from 'react-aria-components';

export function UpdateOffer() {
  const {
    needRefresh: [waiting, setWaiting],
    updateServiceWorker,
  } = useRegisterSW();
  if (!waiting) return null;
  return (
    <div className="toast update" role="status">
      <p>A newer version of Standfast is ready. Your cases stay as they are.</p>
      <Button className="button primary" onPress={() => updateServiceWorker(true)}>
        Use it now
      </Button>
      <Button className="button quiet" onPress={() => setWaiting(false)}>
        Later
      </Button>
    </div>
  );
}

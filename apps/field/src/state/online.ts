/** Whether the device has a network. Nothing needs one; it is told so that nobody wonders. */
import { useSyncExternalStore } from 'react';

const subscribe = (listener: () => void) => {
  addEventListener('online', listener);
  addEventListener('offline', listener);
  return () => {
    removeEventListener('online', listener);
    removeEventListener('offline', listener);
  };
};

export function useOnline(): boolean {
  return useSyncExternalStore(subscribe, () => navigator.onLine);
}

/** Short messages at the foot of the screen, with at most one thing to do about them. */
import { X } from 'lucide-react';
import { useSyncExternalStore } from 'react';
import { Button } from 'react-aria-components';

export interface Toast {
  id: number;
  text: string;
  action?: { label: string; run: () => void };
  /** A fault stays until it is closed. */
  fault: boolean;
}

const LINGER_MS = 8000;
const listeners = new Set<() => void>();
let toasts: readonly Toast[] = [];
let count = 0;

function set(next: readonly Toast[]) {
  toasts = next;
  for (const listener of listeners) listener();
}

function drop(id: number) {
  set(toasts.filter((toast) => toast.id !== id));
}

export function say(text: string, action?: Toast['action']) {
  const id = ++count;
  set([...toasts, { id, text, action, fault: false }].slice(-3));
  setTimeout(() => drop(id), LINGER_MS);
}

/** Says what went wrong; stays until closed. Several lines are shown as they are. */
export function complain(text: string) {
  set([...toasts, { id: ++count, text, fault: true }].slice(-3));
}

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export function Toasts() {
  const shown = useSyncExternalStore(subscribe, () => toasts);
  return (
    <section className="toasts" aria-label="Messages" aria-live="polite">
      {shown.map(({ id, text, action, fault }) => (
        <div key={id} className={`toast ${fault ? 'fault' : ''}`} role={fault ? 'alert' : 'status'}>
          <p>{text}</p>
          {action && (
            <Button
              className="button quiet"
              onPress={() => {
                action.run();
                drop(id);
              }}
            >
              {action.label}
            </Button>
          )}
          <Button className="icon-button" aria-label="Close message" onPress={() => drop(id)}>
            <X aria-hidden />
          </Button>
        </div>
      ))}
    </section>
  );
}
